using System.Buffers;
using System.Globalization;
using ScaleLink.Protocol.Modbus;

namespace ScaleLink.Client.Probe;

/// <summary>Asks the slaves of given addresses for their first registers, in both tables. Reading only; nothing is written to any device.</summary>
internal sealed class SlaveSearch(ProbedPort port)
{
    private const int MostRegisters = 16;
    private static readonly TimeSpan ReplyWithin = TimeSpan.FromMilliseconds(300);
    private static readonly int[] Counts = [MostRegisters, 8, 4, 2, 1];

    /// <summary>What each address has answered.</summary>
    public IReadOnlyList<SlaveAnswer> Ask(IEnumerable<byte> slaves, CancellationToken stop) => [.. slaves.SelectMany(slave => Ask(slave, stop))];

    private IEnumerable<SlaveAnswer> Ask(byte slave, CancellationToken stop)
    {
        foreach (var table in new[] { ModbusFunction.ReadHoldingRegisters, ModbusFunction.ReadInputRegisters })
        {
            foreach (var count in Counts)
            {
                stop.ThrowIfCancellationRequested();
                var answer = Ask(new ModbusRequest(slave, table, 0, count), stop);
                if (answer is null)
                    yield break;
                if (answer.Refusal is null || answer.Refusal == ModbusException.IllegalFunction || count == 1)
                {
                    yield return answer;
                    break;
                }
            }
        }
    }

    private SlaveAnswer? Ask(ModbusRequest question, CancellationToken stop)
    {
        var frame = new byte[ModbusRequest.Length];
        question.Write(frame);
        port.Write(frame);
        var decoder = new ModbusReplyDecoder();
        decoder.Expect(question);
        var heard = new List<byte>();
        SlaveAnswer? answer = null;
        port.Listen(ReplyWithin, bytes =>
        {
            heard.AddRange(bytes);
            var rest = new ReadOnlySequence<byte>(heard.ToArray());
            if (!decoder.TryRead(rest, out var consumed, out _, out var reply))
            {
                heard.RemoveRange(0, (int)rest.Slice(0, consumed).Length);
                return true;
            }

            answer = new SlaveAnswer(question, [.. reply.Data], reply.Kind == ModbusReplyKind.Exception ? reply.Exception : null);
            return false;
        }, stop);
        return answer;
    }
}

/// <summary>What a slave has said: registers, or why not.</summary>
internal sealed record SlaveAnswer(ModbusRequest Question, byte[] Data, ModbusException? Refusal)
{
    public string Describe()
    {
        var table = Question.Function == ModbusFunction.ReadInputRegisters ? "input" : "holding";
        if (Refusal is { } refusal)
            return string.Create(CultureInfo.InvariantCulture, $"slave {Question.Slave}: {table} registers refused with exception {(byte)refusal}");
        var registers = Enumerable.Range(0, Data.Length / 2).Select(k => (Data[2 * k] << 8 | Data[2 * k + 1]).ToString(CultureInfo.InvariantCulture));
        return string.Create(CultureInfo.InvariantCulture, $"slave {Question.Slave}: {table} registers 0 to {Question.Count - 1}: {string.Join(' ', registers)}");
    }
}
