using System.Buffers;
using ScaleLink.Probing.Ports;
using ScaleLink.Probing.Recognition;
using ScaleLink.Protocol.Modbus;

namespace ScaleLink.Probing.Search;

/// <summary>Asks the slaves of given addresses for their first registers, in both tables. Reading only; nothing is written to any device.</summary>
internal sealed class SlaveSearch(ProbedPort port)
{
    private const int MostRegisters = 16;
    private static readonly TimeSpan ReplyWithin = TimeSpan.FromMilliseconds(300);
    private static readonly int[] Counts = [MostRegisters, 8, 4, 2, 1];

    /// <summary>Who has answered.</summary>
    public IReadOnlyList<FoundSlave> Ask(IEnumerable<byte> slaves, CancellationToken stop) =>
        [.. slaves.Select(slave => new FoundSlave(slave, [.. Ask(slave, stop)])).Where(found => found.Answers.Count > 0)];

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

    internal SlaveAnswer? Ask(ModbusRequest question, CancellationToken stop)
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
