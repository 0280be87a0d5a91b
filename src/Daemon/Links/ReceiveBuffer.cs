using System.Buffers;

namespace ScaleLink.Daemon.Links;

/// <summary>Bytes received and not yet decoded.</summary>
internal sealed class ReceiveBuffer(int capacity)
{
    private readonly byte[] _bytes = new byte[capacity];
    private int _filled;

    /// <summary>Blocks until the link gives bytes; gives their number.</summary>
    public int Fill(ILink link)
    {
        var read = link.Read(_bytes, _filled, _bytes.Length - _filled);
        _filled += read;
        return read;
    }

    /// <summary>Offers what is there; keeps what <paramref name="decode"/> was not done with.</summary>
    public void Drain(Func<ReadOnlySequence<byte>, SequencePosition> decode)
    {
        var all = new ReadOnlySequence<byte>(_bytes, 0, _filled);
        var rest = all.Slice(decode(all));
        // A decoder never keeps more than one unfinished message; a full buffer would mean it has stalled.
        if (rest.Length == _bytes.Length)
            rest = rest.Slice(rest.Length);
        var kept = (int)rest.Length;
        rest.CopyTo(_bytes);
        _filled = kept;
    }
}
