using System.Globalization;

namespace ScaleLink.Protocol.TextLines;

/// <summary>What a line carries to prove that it arrived whole.</summary>
enum LineChecksum
{
    /// <summary>Nothing: a changed digit cannot be told from a measured one.</summary>
    None,
    /// <summary>
    /// Exclusive-or of the characters before the separator that stands before the group <c>check</c>, without a leading <c>$</c>, as two
    /// hexadecimal digits: the rule of NMEA 0183, from memory.
    /// </summary>
    Xor,
}

static class LineXor
{
    /// <summary>Whether the two digits at <paramref name="place"/> are right for the characters before them.</summary>
    public static bool IsGood(string line, int place, ReadOnlySpan<char> digits)
    {
        if (place < 1 || !byte.TryParse(digits, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var told))
            return false;
        var covered = line.AsSpan(0, place - 1);
        if (covered is ['$', ..])
            covered = covered[1..];
        return Of(covered) == told;
    }

    public static byte Of(ReadOnlySpan<char> text)
    {
        byte sum = 0;
        foreach (var letter in text)
            sum ^= (byte)letter;
        return sum;
    }
}
