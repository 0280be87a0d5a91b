using ScaleLink.Daemon.Pipeline;

namespace ScaleLink.Daemon.Publishing;

/// <summary>What every face reads from: the pads, the newest reading, and the readings as they come.</summary>
public sealed class LiveBay(IReadOnlyList<PadChannel> pads)
{
    private BayReading? _newest;
    private long _restSinceNs;
    private bool _hasMoved = true;

    /// <summary>The pads, in the order LF, RF, LR, RR.</summary>
    public IReadOnlyList<PadChannel> Pads { get; } = [.. pads.OrderBy(p => p.Corner)];

    /// <summary>The newest reading; absent in the first moments of a run.</summary>
    public BayReading? Newest => Volatile.Read(ref _newest);

    /// <summary>When the car came to the rest it is in, or was in last, ns on the daemon's clock. A touch does not begin a new one; moving does.</summary>
    public long RestSinceNs => Interlocked.Read(ref _restSinceNs);

    /// <summary>Every reading, 20 a second.</summary>
    public Broadcast<BayReading> Readings { get; } = new();

    /// <summary>A new reading for every face.</summary>
    public void Publish(BayReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        FollowRest(reading);
        Volatile.Write(ref _newest, reading);
        Readings.Publish(reading);
    }

    private void FollowRest(BayReading reading)
    {
        if (reading.Verdict is BayVerdict.Moving or BayVerdict.Raised or BayVerdict.Incomplete)
            _hasMoved = true;
        else if (reading.Verdict == BayVerdict.Settled && _hasMoved)
            (_hasMoved, _) = (false, Interlocked.Exchange(ref _restSinceNs, reading.AtNs));
    }
}
