using System.Globalization;
using ScaleLink.Protocol.Framing;
using ScaleLink.Protocol.Modbus;

namespace ScaleLink.Client.Probe;

/// <summary>Whether somebody else's Modbus traffic is on the line: whole questions and the replies to them, by length and check.</summary>
internal static class ModbusGuess
{
    private const int FewestExchanges = 2;

    public static Guess? Of(byte[] heard)
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
        var slaves = string.Join(", ", asked.Keys.Order().Select(s => s.ToString(CultureInfo.InvariantCulture)));
        var first = asked.MinBy(a => a.Key).Value;
        return new Guess("modbus-rtu", $"{questions} Modbus questions and {replies} replies; slaves {slaves}", Keys(first.Slave), [
            "Another master asks on this line: two masters talk over each other. Take the other one off before the daemon reads here.",
            "Which registers hold the load, and of what type, stands in the device's manual.",
        ])
        {
            Tables = Table(first.Function, first.Address, first.Count),
        };
    }

    /// <summary>Keys of a slave; the capacity is a person's to correct.</summary>
    public static IReadOnlyList<string> Keys(byte slave) =>
        ["protocol = \"modbus-rtu\"", $"slave = {slave.ToString(CultureInfo.InvariantCulture)}", "capacity_kg = 600  # what the pad may carry: correct it"];

    /// <summary>A load in the first registers.</summary>
    public static IReadOnlyList<string> Table(ModbusFunction function, ushort address, int count) =>
    [
        "[[pads.registers]]",
        "means = \"load\"",
        $"at = {address.ToString(CultureInfo.InvariantCulture)}",
        $"type = \"{(count >= 2 ? "s32" : "s16")}\"  # as the device's manual says",
        .. function == ModbusFunction.ReadInputRegisters ? new[] { "table = \"input\"" } : [],
    ];

    private static bool IsReply(ReadOnlySpan<byte> bytes, in ModbusRequest question) =>
        bytes.Length >= question.ReplyLength && bytes[0] == question.Slave && bytes[1] == (byte)question.Function && bytes[2] == 2 * question.Count
        && Crc16.Modbus(bytes[..question.ReplyLength]) == 0;
}
