using ScaleLink.Protocol.Framing;

namespace ScaleLink.Protocol.PadFrames;

/// <summary>
/// The check behind an encoded body: its CRC in three bytes that are never zero. It covers the bytes as sent, so one
/// damaged byte is a burst of at most 8 bits in what it covers, which a 16-bit CRC always sees. A CRC inside the
/// stuffing would be blind to some damage of the code bytes, which moves everything behind them.
/// </summary>
static class FrameCheck
{
    public const int Length = 3;
    const int Marker = 0x40;

    public static void Write(ReadOnlySpan<byte> encoded, Span<byte> destination)
    {
        var crc = Crc16.Ibm3740(encoded);
        destination[0] = (byte)(Marker | crc >> 12);
        destination[1] = (byte)(Marker | crc >> 6 & 0x3F);
        destination[2] = (byte)(Marker | crc & 0x3F);
    }

    public static bool IsGood(ReadOnlySpan<byte> encoded, ReadOnlySpan<byte> check)
    {
        Span<byte> expected = stackalloc byte[Length];
        Write(encoded, expected);
        return expected.SequenceEqual(check);
    }

    /// <summary>Whether some byte behind these would bring the CRC back to where every frame starts.</summary>
    public static bool CanStartAfresh(ReadOnlySpan<byte> encoded)
    {
        var crc = Crc16.Ibm3740(encoded);
        for (var next = 0; next <= byte.MaxValue; next++)
            if (Crc16.ContinueIbm3740(crc, [(byte)next]) == Crc16.Start)
                return true;
        return false;
    }
}
