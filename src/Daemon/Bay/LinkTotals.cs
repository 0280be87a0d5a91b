using ScaleLink.Daemon.Links;

namespace ScaleLink.Daemon.Bay;

/// <summary>What the links of one pad have brought since the daemon started, across every unplugging. Not thread-safe: its pad guards it.</summary>
internal sealed class LinkTotals
{
    private Func<ProtocolCounters>? _open;
    private ProtocolCounters _ended;
    private long _bytes, _bytesAtSample, _opened;

    /// <summary>Whether a link is open.</summary>
    public bool IsOpen => _open is not null;

    /// <summary>Whether bytes came since the last sample.</summary>
    public bool HasBytesSinceSample => _bytes > _bytesAtSample;

    /// <summary>Of all links, the open one included.</summary>
    public ProtocolCounters Frames
    {
        get
        {
            var now = _open?.Invoke() ?? default;
            return new ProtocolCounters(_ended.Frames + now.Frames, _ended.BadFrames + now.BadFrames, _ended.SkippedBytes + now.SkippedBytes);
        }
    }

    public void Begin(Func<ProtocolCounters> counters)
    {
        End();
        (_open, _bytesAtSample) = (counters, _bytes);
        _opened++;
    }

    public void End() => (_ended, _open) = (Frames, null);

    public void Received(int bytes) => _bytes += bytes;

    public void Sampled() => _bytesAtSample = _bytes;

    /// <summary>All of it, with the losses that the pad's numbering shows.</summary>
    public PadCounters With(SequenceTrack sequence)
    {
        var frames = Frames;
        return new PadCounters(_bytes, frames.Frames, frames.BadFrames, frames.SkippedBytes, sequence.Missed, sequence.Repeated, _opened);
    }
}
