using System.Buffers;

namespace ScaleLink.Daemon.Links;

/// <summary>Bytes received and not yet decoded.</summary>
internal sealed class ReceiveBuffer
{
    private const int MostKept = 4096;
    private byte[] _bytes = new byte[2 * MostKept];
    private int _filled;

    /// <summary>How many bytes wait.</summary>
    public int Count => _filled;

    public void Add(ReadOnlySpan<byte> bytes)
    {
        if (_filled + bytes.Length > _bytes.Length)
            Array.Resize(ref _bytes, _filled + bytes.Length);
        bytes.CopyTo(_bytes.AsSpan(_filled));
        _filled += bytes.Length;
    }

    /// <summary>Offers what is there; keeps what <paramref name="decode"/> was not done with.</summary>
    public void Drain(Func<ReadOnlySequence<byte>, SequencePosition> decode)
    {
        var all = new ReadOnlySequence<byte>(_bytes, 0, _filled);
        var rest = all.Slice(decode(all));
        // A decoder never keeps more than one unfinished message; more would mean that it has stalled.
        if (rest.Length > MostKept)
            rest = rest.Slice(rest.Length);
        var kept = (int)rest.Length;
        rest.CopyTo(_bytes);
        _filled = kept;
    }

    public void Clear() => _filled = 0;
}
