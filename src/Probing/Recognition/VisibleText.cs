using System.Globalization;
using System.Text;

namespace ScaleLink.Probing.Recognition;

/// <summary>Bytes as a terminal may show them: printable characters as they are, everything else by its name or its digits.</summary>
internal static class VisibleText
{
    private const int BytesOfALine = 24;
    private const byte EndOfText = 3;

    private static readonly Dictionary<byte, string> Names = new()
    {
        [0x00] = "<NUL>", [0x02] = "<STX>", [0x03] = "<ETX>", [0x05] = "<ENQ>", [0x06] = "<ACK>", [0x07] = "<BEL>", [0x09] = "<TAB>",
        [0x0A] = "<LF>", [0x0D] = "<CR>", [0x15] = "<NAK>", [0x1B] = "<ESC>",
    };

    /// <summary>The bytes in one line.</summary>
    public static string Of(ReadOnlySpan<byte> bytes)
    {
        var text = new StringBuilder();
        foreach (var value in bytes)
        {
            if (Names.TryGetValue(value, out var name))
                text.Append(name);
            else if (value is >= 0x20 and < 0x7F)
                text.Append((char)value);
            else
                text.Append(CultureInfo.InvariantCulture, $"<{value:X2}>");
        }

        return text.ToString();
    }

    /// <summary>The first so many lines of what was heard: text by its lines, anything else as rows of digits.</summary>
    public static IReadOnlyList<string> Lines(byte[] heard, bool isText, int most)
    {
        var pieces = isText ? Split(heard) : heard.Chunk(BytesOfALine);
        return [.. pieces.Take(most).Select(p => isText ? Of(p) : string.Join(' ', p.Select(b => b.ToString("x2", CultureInfo.InvariantCulture))))];
    }

    // By what ends the device's lines.
    private static IEnumerable<byte[]> Split(byte[] heard)
    {
        var end = Array.Find<byte>([(byte)'\n', (byte)'\r', EndOfText], heard.Contains);
        for (var start = 0; start < heard.Length;)
        {
            var at = Array.IndexOf(heard, end, start);
            var next = at < 0 ? heard.Length : at + 1;
            yield return heard[start..next];
            start = next;
        }
    }
}
