using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Links;
using ScaleLink.Daemon.Links.Polling;
using ScaleLink.Daemon.Ports;
using ScaleLink.Measure;
using ScaleLink.Protocol.Modbus;
using ScaleLink.Protocol.Readings;

namespace Daemon.Tests.Links.Polling;

/// <summary>One line in virtual time: the real conversation on one side, scripted slaves on the other.</summary>
internal sealed class VirtualLine
{
    public const long Ms = 1_000_000;

    private readonly PriorityQueue<byte[], long> _toHost = new();
    private readonly Dictionary<byte, HeardSource> _sources = [];
    private readonly ModbusConversation _conversation;

    public VirtualLine(IEnumerable<byte> slaves, double pollHz = 20, double timeoutMs = 100, RegisterMap? map = null)
    {
        var all = new List<BusSlave>();
        foreach (var address in slaves)
        {
            _sources[address] = new HeardSource();
            all.Add(Slave(address, pollHz, timeoutMs, map ?? OneLoad, _sources[address]));
        }

        _conversation = new ModbusConversation(all, new LineTiming(new SerialAddress("/dev/line", 115200)));
        _conversation.Opened(0);
    }

    public static RegisterMap OneLoad { get; } = new([Load(0, 0)]);

    /// <summary>A question arrives at a slave: what comes back, and when.</summary>
    public Func<ModbusRequest, long, IEnumerable<(long AtNs, byte[] Bytes)>> Answer { get; set; } = (question, now) => [(now + 4 * Ms, Registers(question, 7))];

    public long NowNs { get; private set; }

    public List<(long AtNs, ModbusRequest Question)> Asked { get; } = [];

    public HeardSource this[byte slave] => _sources[slave];

    public static RegisterField Load(ushort address, int cell) =>
        new(ModbusFunction.ReadHoldingRegisters, address, RegisterType.S32, WordOrder.HighFirst, new FieldRule { Meaning = FieldMeaning.Load, Unit = FieldUnit.Count, Cell = cell });

    /// <summary>Every register pair holds <paramref name="value"/>.</summary>
    public static byte[] Registers(ModbusRequest question, int value)
    {
        var frame = new byte[ModbusReplyWriter.MaxLength];
        var registers = Enumerable.Range(0, question.Count).Select(k => (ushort)(k % 2 == 0 ? value >> 16 : value)).ToArray();
        return frame[..ModbusReplyWriter.WriteRegisters(question.Slave, question.Function, registers, frame)];
    }

    public static byte[] Refusal(ModbusRequest question, ModbusException code)
    {
        var frame = new byte[5];
        ModbusReplyWriter.WriteException(question.Slave, question.Function, code, frame);
        return frame;
    }

    /// <summary>Lets so much time pass.</summary>
    public void Run(double seconds)
    {
        var end = NowNs + (long)(seconds * 1e9);
        while (true)
        {
            var turn = _conversation.Next(NowNs);
            if (!turn.Send.IsEmpty)
            {
                Assert.True(ModbusRequest.TryParse(turn.Send.Span, out var question));
                Asked.Add((NowNs, question));
                foreach (var (at, bytes) in Answer(question, NowNs))
                    _toHost.Enqueue(bytes, at);
                continue;
            }

            Assert.True(turn.AgainNs > NowNs, "It asks to be asked again at once.");
            var isBytes = _toHost.TryPeek(out _, out var bytesAt) && bytesAt <= turn.AgainNs;
            var next = isBytes ? bytesAt : turn.AgainNs;
            if (next > end)
                break;
            NowNs = Math.Max(NowNs, next);
            if (isBytes)
                _conversation.Received(_toHost.Dequeue(), NowNs);
        }

        NowNs = end;
    }

    /// <summary>The longest time between two samples of a slave since an instant, ms. The newest is still held, up to a period of 20 Hz.</summary>
    public double LongestGapMs(byte slave, long sinceNs)
    {
        var instants = this[slave].Samples.Select(s => s.ArrivalNs).Where(at => at >= sinceNs).Prepend(sinceNs).ToList();
        instants.Add(Math.Max(instants[^1], NowNs - 50 * Ms));
        return instants.Zip(instants.Skip(1), (a, b) => (b - a) / (double)Ms).Max();
    }

    private static BusSlave Slave(byte address, double pollHz, double timeoutMs, RegisterMap map, IPadSource sink)
    {
        var source = new SourceConfiguration
        {
            Link = "/dev/line",
            Baud = 115200,
            Protocol = ProtocolKind.ModbusRtu,
            Modbus = new ModbusConfiguration(address, pollHz, TimeSpan.FromMilliseconds(timeoutMs), map),
        };
        return new BusSlave(
            new PadConfiguration { Corner = Corner.LF, Source = source, CapacityKg = 600, SpanUncertaintyPercent = 1, CorrectTilt = true }, source, sink);
    }
}
