using System.Buffers;
using ScaleLink.Probing.Ports;
using ScaleLink.Protocol.Modbus;

namespace ScaleLink.Probing.Search;

/// <summary>Asks slaves on an open port, one question at a time. Reading only; nothing is written to any device.</summary>
internal sealed class SlaveQuestions(ProbedPort port, TimeProvider time)
{
    private static readonly TimeSpan Quiet = TimeSpan.FromMilliseconds(30);
    private static readonly TimeSpan OneMeasurement = TimeSpan.FromMilliseconds(120);
    private static readonly TimeSpan LongestNoise = TimeSpan.FromMilliseconds(300);

    /// <summary>Sends a question and waits for its reply.</summary>
    /// <param name="question">The question.</param>
    /// <param name="within">How long.</param>
    /// <param name="beside">What else came.</param>
    /// <param name="stop">Ends it.</param>
    public SlaveAnswer? Ask(in ModbusRequest question, TimeSpan within, out HeardBeside beside, CancellationToken stop)
    {
        byte? other = null;
        stop.ThrowIfCancellationRequested();
        var frame = new byte[ModbusRequest.Length];
        question.Write(frame);
        var asked = question;
        var (decoder, rest, start) = (new ModbusReplyDecoder(), new List<byte>(), time.GetTimestamp());
        decoder.Expect(question);
        SlaveAnswer? answer = null;
        port.Write(frame);
        port.Listen(within, bytes =>
        {
            rest.AddRange(bytes);
            while (answer is null && rest.Count > 0)
            {
                var left = new ReadOnlySequence<byte>(rest.ToArray());
                var isFrame = decoder.TryRead(left, out var consumed, out _, out var reply);
                rest.RemoveRange(0, (int)left.Slice(0, consumed).Length);
                if (!isFrame)
                    break;
                if (reply.Kind is ModbusReplyKind.OtherSlave)
                    other = reply.Slave;
                if (reply.Kind is ModbusReplyKind.Registers or ModbusReplyKind.Exception && reply.Slave == asked.Slave)
                    answer = new SlaveAnswer(Registers(reply.Data), reply.Kind == ModbusReplyKind.Exception ? reply.Exception : null, time.GetElapsedTime(start));
            }

            return answer is null;
        }, stop);
        beside = new HeardBeside(other is not null || answer is null && decoder.Counters.Bytes + rest.Count > ModbusRequest.Length * decoder.Counters.Echoes, other);
        return answer;
    }

    /// <summary>As long as a slow device takes for its next measurement.</summary>
    public void LetTimePass(CancellationToken stop) => port.Listen(OneMeasurement, _ => true, stop);

    /// <summary>Whether anything comes, or in vain for so long.</summary>
    public bool Hears(TimeSpan within, CancellationToken stop)
    {
        var isHeard = false;
        port.Listen(within, _ => !(isHeard = true), stop);
        return isHeard;
    }

    /// <summary>Lets what is still on its way go by.</summary>
    public void Settle(CancellationToken stop)
    {
        var (start, isQuiet) = (time.GetTimestamp(), false);
        while (!isQuiet && time.GetElapsedTime(start) < LongestNoise && !stop.IsCancellationRequested)
        {
            isQuiet = true;
            port.Listen(Quiet, _ => isQuiet = false, stop);
        }
    }

    private static ushort[] Registers(ReadOnlySpan<byte> data)
    {
        var registers = new ushort[data.Length / 2];
        for (var k = 0; k < registers.Length; k++)
            registers[k] = (ushort)(data[2 * k] << 8 | data[2 * k + 1]);
        return registers;
    }
}

/// <summary>What a slave has said: registers, or why not.</summary>
/// <param name="Registers">What they held; none with a refusal.</param>
/// <param name="Refusal">How it refused.</param>
/// <param name="Took">From the question to the whole reply.</param>
internal sealed record SlaveAnswer(ushort[] Registers, ModbusException? Refusal, TimeSpan Took);

/// <summary>What came that was no reply to the question, the adapter's own echo aside: a late reply to one before, or something garbled.</summary>
/// <param name="IsAny">Something came.</param>
/// <param name="Slave">Whose late reply it was, where it came whole.</param>
internal readonly record struct HeardBeside(bool IsAny, byte? Slave);
