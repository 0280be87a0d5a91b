using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Bay;

/// <summary>Cuts time into blocks of 50 ms and says when the next one may be weighed: as soon as every live pad has samples beyond its end.</summary>
internal sealed class BlockClock(IReadOnlyList<PadChannel> pads, BayClock clock)
{
    public const long LengthNs = 50 * Nanoseconds.PerMillisecond;

    // With no pad to wait for, a block still lets the slowest adapter deliver.
    private const long LeastDelayNs = 20 * Nanoseconds.PerMillisecond;
    // Behind by more than this (a suspended machine), the blocks in between are of no use to anybody.
    private const long MostBehindNs = 2 * Nanoseconds.PerSecond;

    private long _end = LengthNs;

    /// <summary>The next block that is ready; <paramref name="skipped"/> when time was left out before it.</summary>
    public bool TryNext(out long fromNs, out long toNs, out bool skipped)
    {
        var now = clock.NowNs;
        skipped = now - _end > MostBehindNs;
        if (skipped)
            _end = now / LengthNs * LengthNs - LengthNs;
        (fromNs, toNs) = (_end - LengthNs, _end);
        if (now < _end + LeastDelayNs || !pads.All(p => p.HasReached(_end)))
            return false;
        _end += LengthNs;
        return true;
    }
}
