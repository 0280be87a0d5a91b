using ScaleLink.Protocol.Readings;

namespace ScaleLink.Protocol.TextLines;

/// <summary>
/// For lines without a checksum: a wrong bit can make one digit into another, and nothing in the line shows it. A single reading that
/// leaves two neighbours which agree with each other is dropped. Each reading is therefore handed on when the next one is there.
/// A car cannot do that between two lines; an error below the limit passes.
/// </summary>
/// <param name="limit">How far a reading may stand off, counts.</param>
sealed class SpikeGuard(double limit)
{
    PadReading _before, _held;
    long _heldAt;
    int _have;

    /// <summary>Readings dropped.</summary>
    public long Dropped { get; private set; }

    /// <summary>Takes a reading and hands on the one before it, unless that one stands off.</summary>
    /// <param name="next">The new reading.</param>
    /// <param name="at">Its instant, in the caller's unit.</param>
    /// <param name="passed">The reading before it.</param>
    /// <param name="passedAt">The instant of that reading.</param>
    public bool TryPass(in PadReading next, long at, out PadReading passed, out long passedAt)
    {
        (passed, passedAt) = (_held, _heldAt);
        var isSpike = _have == 2 && Math.Abs(next.Sum - _before.Sum) < limit / 2
            && Math.Abs(_held.Sum - (next.Sum + _before.Sum) / 2.0) > limit;
        var passes = _have > 0 && !isSpike;
        if (isSpike)
            Dropped++;
        if (passes)
            _before = _held;
        (_held, _heldAt, _have) = (next, at, passes ? 2 : Math.Max(_have, 1));
        return passes;
    }
}
