namespace ScaleLink.Protocol.Framing;

/// <summary>
/// Consistent Overhead Byte Stuffing: takes every zero out of a block, so that a zero can mark its end.
/// Source: S. Cheshire, M. Baker, IEEE/ACM Transactions on Networking 7(2), 1999. The delimiter is the caller's.
/// </summary>
static class Cobs
{
    const int LongestRun = 254;

    /// <summary>The most bytes that <see cref="Encode"/> makes of <paramref name="length"/> bytes.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The length is negative.</exception>
    public static int MaxEncodedLength(int length)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(length);
        return checked(length + Math.Max(1, (length + LongestRun - 1) / LongestRun));
    }

    /// <summary>Encodes <paramref name="source"/>; the result holds no zero. The two spans must not overlap.</summary>
    /// <returns>The number of bytes written.</returns>
    /// <exception cref="ArgumentException">The destination is shorter than the result.</exception>
    public static int Encode(ReadOnlySpan<byte> source, Span<byte> destination)
    {
        var written = 0;
        while (true)
        {
            var zero = source.IndexOf((byte)0);
            var run = zero < 0 ? source.Length : zero;
            var isFull = run >= LongestRun;
            run = Math.Min(run, LongestRun);

            if (destination.Length - written <= run)
                throw new ArgumentException("The destination is too short; ask MaxEncodedLength.", nameof(destination));
            destination[written++] = (byte)(run + 1);
            source[..run].CopyTo(destination[written..]);
            written += run;

            if (run == source.Length)
                return written;
            // A full run stands for no zero of its own, so a zero behind it is still to be encoded.
            source = source[(isFull ? run : run + 1)..];
        }
    }

    /// <summary>Decodes <paramref name="source"/>, which comes without its delimiter. The two spans must not overlap.</summary>
    /// <returns>
    /// False when the source is empty, holds a zero, ends inside a run, or the destination is too short; the destination's
    /// content is then meaningless and <paramref name="written"/> is 0.
    /// </returns>
    public static bool TryDecode(ReadOnlySpan<byte> source, Span<byte> destination, out int written)
    {
        written = 0;
        var length = 0;
        if (source.IsEmpty || source.Contains((byte)0))
            return false;

        while (true)
        {
            int code = source[0];
            var run = code - 1;
            if (run >= source.Length || run > destination.Length - length)
                return false;
            source.Slice(1, run).CopyTo(destination[length..]);
            length += run;
            source = source[code..];

            if (source.IsEmpty)
            {
                written = length;
                return true;
            }
            if (code <= LongestRun)
            {
                if (length == destination.Length)
                    return false;
                destination[length++] = 0;
            }
        }
    }
}
