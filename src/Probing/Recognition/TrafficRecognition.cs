using ScaleLink.Protocol.Framing;
using ScaleLink.Protocol.Modbus;

namespace ScaleLink.Probing.Recognition;

/// <summary>Whether somebody else's Modbus traffic is on the line: whole questions and the replies to them, by length and check.</summary>
internal static class TrafficRecognition
{
    private const int FewestExchanges = 2;

    public static FoundTraffic? Of(byte[] heard)
    {
        var asked = new Dictionary<byte, ModbusRequest>();
        var (questions, replies) = (0, 0);
        ModbusRequest? open = null;
        for (var at = 0; at < heard.Length;)
        {
            if (at + ModbusRequest.Length <= heard.Length && ModbusRequest.TryParse(heard.AsSpan(at, ModbusRequest.Length), out var question))
            {
                (questions, open) = (questions + 1, question);
                at += ModbusRequest.Length;
            }
            else if (open is { } waiting && IsReply(heard.AsSpan(at), waiting))
            {
                (replies, open) = (replies + 1, null);
                asked.TryAdd(waiting.Slave, waiting);
                at += waiting.ReplyLength;
            }
            else
            {
                at++;
            }
        }

        if (replies < FewestExchanges)
            return null;
        return new FoundTraffic(questions, replies, [.. asked.OrderBy(a => a.Key).Select(a => a.Value)]);
    }

    private static bool IsReply(ReadOnlySpan<byte> bytes, in ModbusRequest question) =>
        bytes.Length >= question.ReplyLength && bytes[0] == question.Slave && bytes[1] == (byte)question.Function && bytes[2] == 2 * question.Count
        && Crc16.Modbus(bytes[..question.ReplyLength]) == 0;
}
