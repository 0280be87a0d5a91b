using ScaleLink.Protocol.Framing;
using ScaleLink.Protocol.Modbus;

namespace ScaleLink.Probing.Recognition;

/// <summary>Whether somebody else's Modbus traffic is on the line: whole questions and the replies to them, by length and check.</summary>
internal static class TrafficRecognition
{
    private const int FewestExchanges = 2;

    public static IReadOnlyList<FoundTraffic> Of(byte[] heard)
    {
        var slaves = new SortedDictionary<byte, FoundTraffic>();
        ModbusRequest? open = null;
        for (var at = 0; at < heard.Length;)
        {
            if (at + ModbusRequest.Length <= heard.Length && ModbusRequest.TryParse(heard.AsSpan(at, ModbusRequest.Length), out var question))
            {
                open = question;
                at += ModbusRequest.Length;
            }
            else if (open is { } waiting && IsReply(heard.AsSpan(at), waiting))
            {
                open = null;
                slaves[waiting.Slave] = slaves.TryGetValue(waiting.Slave, out var known) ? known with { Replies = known.Replies + 1 } : new FoundTraffic(waiting, 1);
                at += waiting.ReplyLength;
            }
            else
            {
                at++;
            }
        }

        return slaves.Values.Sum(s => s.Replies) < FewestExchanges ? [] : [.. slaves.Values];
    }

    private static bool IsReply(ReadOnlySpan<byte> bytes, in ModbusRequest question) =>
        bytes.Length >= question.ReplyLength && bytes[0] == question.Slave && bytes[1] == (byte)question.Function && bytes[2] == 2 * question.Count
        && Crc16.Modbus(bytes[..question.ReplyLength]) == 0;
}
