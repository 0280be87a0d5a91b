using ScaleLink.Daemon.Pipeline;

namespace ScaleLink.Daemon.Publishing;

/// <summary>What every face reads from: the pads, the newest reading, and the readings as they come.</summary>
public sealed class LiveBay(IReadOnlyList<PadChannel> pads)
{
    private const long ShortestRitualNs = 1500 * Nanoseconds.PerMillisecond;

    private BayReading? _newest;
    private long _restSinceNs;
    private long? _unsettledSinceNs = long.MinValue / 2;

    /// <summary>The pads, in the order LF, RF, LR, RR.</summary>
    public IReadOnlyList<PadChannel> Pads { get; } = [.. pads.OrderBy(p => p.Corner)];

    /// <summary>The newest reading; absent in the first moments of a run.</summary>
    public BayReading? Newest => Volatile.Read(ref _newest);

    /// <summary>When the car came to the rest it is in, or was in last, ns on the daemon's clock. A touch does not begin a new one; being moved does.</summary>
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

    // Bouncing or rolling a car takes longer than a step nearby or a slip of its own friction; then it has another rest.
    private void FollowRest(BayReading reading)
    {
        if (reading.Verdict != BayVerdict.Settled)
        {
            _unsettledSinceNs ??= reading.AtNs;
            return;
        }

        if (reading.AtNs - _unsettledSinceNs >= ShortestRitualNs)
            Interlocked.Exchange(ref _restSinceNs, reading.AtNs);
        _unsettledSinceNs = null;
    }
}
