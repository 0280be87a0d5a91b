namespace CarOnPads.Ports;

/// <summary>
/// Characters from one asynchronous transmitter to a receiver that may be set otherwise, bit by bit: the receiver waits for a falling edge, looks at the
/// middle of each bit by its own clock, and goes on behind the stop bit. Source of the frame (start bit, data from the lowest bit up, parity, stop bit):
/// from memory, as in the data sheets of such parts.
/// </summary>
static class Uart
{
    const int DataBits = 8;

    /// <summary>What the receiver makes of it. A character with a wrong parity or without a stop bit comes as <paramref name="wrong"/>, or not at all.</summary>
    /// <param name="bytes">Sent one right behind the other.</param>
    /// <param name="from">How the transmitter is set.</param>
    /// <param name="to">How the receiver is set.</param>
    /// <param name="wrong">What stands for a character that is known to be wrong; nothing: it is left out. A receiver without parity takes one without its stop bit as it is.</param>
    public static byte[] Carry(ReadOnlySpan<byte> bytes, LineSetting from, LineSetting to, byte? wrong)
    {
        if (from == to)
            return bytes.ToArray();
        var (line, received) = (Sent(bytes, from), new List<byte>());
        var bit = (double)from.Baud / to.Baud;
        // In bits of the transmitter: the line is high before and behind.
        for (var at = 0; NextEdge(line, at) is { } edge;)
        {
            var value = 0;
            for (var k = 0; k < DataBits; k++)
                value |= Level(line, edge + (1.5 + k) * bit) ? 1 << k : 0;
            var hasParity = to.Parity != LineParity.None;
            var isWrong = !Level(line, edge + ((hasParity ? 2.5 : 1.5) + DataBits) * bit)
                || hasParity && Level(line, edge + (1.5 + DataBits) * bit) != ParityBit((byte)value, to.Parity);
            if (!Level(line, edge + 0.5 * bit))
            {
                if (!isWrong || wrong is not null && !hasParity)
                    received.Add((byte)value);
                else if (wrong is { } stand)
                    received.Add(stand);
                at = (int)Math.Ceiling(edge + ((hasParity ? 2.5 : 1.5) + DataBits) * bit);
            }
            else
            {
                at = edge + 1;
            }
        }

        return [.. received];
    }

    static bool[] Sent(ReadOnlySpan<byte> bytes, LineSetting setting)
    {
        var line = new List<bool>(bytes.Length * setting.BitsOfCharacter);
        foreach (var value in bytes)
        {
            line.Add(false);
            for (var k = 0; k < DataBits; k++)
                line.Add((value >> k & 1) != 0);
            if (setting.Parity != LineParity.None)
                line.Add(ParityBit(value, setting.Parity));
            line.Add(true);
        }

        return [.. line];
    }

    static bool ParityBit(byte value, LineParity parity) => (System.Numerics.BitOperations.PopCount(value) & 1) == (parity == LineParity.Even ? 1 : 0);

    static bool Level(bool[] line, double at) => at < 0 || at >= line.Length || line[(int)at];

    static int? NextEdge(bool[] line, int from)
    {
        for (var at = from; at < line.Length; at++)
            if (!line[at] && (at == 0 || line[at - 1]))
                return at;
        return null;
    }
}
