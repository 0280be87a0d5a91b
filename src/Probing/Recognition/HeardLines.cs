using System.Buffers;
using System.Text;
using ScaleLink.Protocol.Readings;
using ScaleLink.Protocol.TextLines;

namespace ScaleLink.Probing.Recognition;

/// <summary>Text as it was heard, cut into lines as the daemon cuts it.</summary>
internal sealed class HeardLines
{
    private const byte EndOfText = 3;

    private readonly byte[] _heard;

    private HeardLines(byte[] heard, LineEnd end, char? only)
    {
        (_heard, End, Only) = (heard, end, only);
        // The first and the last may be torn.
        var pieces = Encoding.ASCII.GetString(heard).Split(only is { } one ? [one] : ['\r', '\n']);
        var wrapping = Encoding.ASCII.GetChars(TextLineDecoder.Wrapping.ToArray());
        Lines = [.. pieces.Skip(1).SkipLast(1).Select(l => l.Trim(wrapping)).Where(l => l.Length is > 0 and <= TextLineDecoder.LongestLine)];
    }

    public LineEnd End { get; }

    /// <summary>The one character that ends a line; nothing when CR or LF do.</summary>
    public char? Only { get; }

    public IReadOnlyList<string> Lines { get; }

    /// <summary>By CR, LF or both; where neither was heard, by ETX.</summary>
    public static HeardLines Of(byte[] heard) => heard.Contains((byte)'\r') || heard.Contains((byte)'\n') || !heard.Contains(EndOfText)
        ? new HeardLines(heard, LineEnd.ReturnOrFeed, null)
        : new HeardLines(heard, LineEnd.Only(EndOfText), (char)EndOfText);

    /// <summary>How many of them are read with a pattern. The decoder of the daemon judges, not a likeness of it.</summary>
    public int Fitting(string pattern, FieldUnit unit, LineChecksum checksum)
    {
        if (!LinePattern.TryCreate(pattern, unit, 1, checksum, out var made, out _))
            return 0;
        var decoder = new TextLineDecoder(made, End);
        var rest = new ReadOnlySequence<byte>(_heard);
        while (decoder.TryRead(rest, out var consumed, out _, out _))
            rest = rest.Slice(consumed);
        return (int)decoder.Counters.Lines;
    }
}
