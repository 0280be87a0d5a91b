using System.Text;

namespace ScaleLink.Protocol.PadFrames;

/// <summary>A short text inside a hello: its length in one byte, then printable ASCII.</summary>
static class HelloText
{
    public const int MinSerialNumber = 1;
    public const int MinFirmware = 0;
    public const int MaxLength = 32;

    public static bool TryRead(ReadOnlySpan<byte> source, int minLength, out ReadOnlySpan<byte> text, out ReadOnlySpan<byte> rest)
    {
        text = rest = default;
        if (source.IsEmpty || source[0] < minLength || source[0] > MaxLength || source[0] >= source.Length)
            return false;
        text = source.Slice(1, source[0]);
        rest = source[(1 + source[0])..];
        return !text.ContainsAnyExceptInRange((byte)' ', (byte)'~');
    }

    /// <exception cref="ArgumentException">The text is too short, too long, or not printable ASCII.</exception>
    public static int Write(string text, int minLength, string name, Span<byte> destination)
    {
        if (text.Length < minLength || text.Length > MaxLength || text.AsSpan().ContainsAnyExceptInRange(' ', '~'))
            throw new ArgumentException($"{name} needs {minLength} to {MaxLength} printable ASCII characters.", name);
        destination[0] = (byte)text.Length;
        return 1 + Encoding.ASCII.GetBytes(text, destination[1..]);
    }
}
