using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Bay;

/// <summary>What every face reads from: the pads, the newest reading, and the readings as they come.</summary>
internal sealed class LiveBay(IReadOnlyList<PadChannel> pads)
{
    private const long ShortestSettleNs = 1500 * Nanoseconds.PerMillisecond;

    private BayReading? _newest;
    private CarRest _rest = new(0, WasSeen: false);
    private long? _unsettledSinceNs = long.MinValue / 2;
    // Nobody watched before the first reading.
    private bool _wasBlind = true;

    /// <summary>The pads, in the order LF, RF, LR, RR.</summary>
    public IReadOnlyList<PadChannel> Pads { get; } = [.. pads.OrderBy(p => p.Corner)];

    /// <summary>The newest reading; absent in the first moments of a run.</summary>
    public BayReading? Newest => Volatile.Read(ref _newest);

    /// <summary>The rest that the car is in, or was in last. A touch does not begin a new one; being moved does.</summary>
    public CarRest Rest => Volatile.Read(ref _rest);

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
            // A car that is seen off the pads has moved, whatever was missed before.
            _wasBlind = reading.Verdict == BayVerdict.Incomplete || (_wasBlind && reading.Verdict != BayVerdict.Raised);
            return;
        }

        if (reading.AtNs - _unsettledSinceNs >= ShortestSettleNs)
            Volatile.Write(ref _rest, new(reading.AtNs, WasSeen: !_wasBlind));
        (_unsettledSinceNs, _wasBlind) = (null, false);
    }
}

/// <summary>A car at rest on its pads.</summary>
/// <param name="SinceNs">When it came to rest, ns on the daemon's clock.</param>
/// <param name="WasSeen">Whether it was watched on the way there; after a start or a gap in the readings it may have stood there all the time.</param>
internal sealed record CarRest(long SinceNs, bool WasSeen);
