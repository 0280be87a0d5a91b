namespace ScaleLink.Measure.Age;

/// <summary>
/// The daemon's monotonic clock as seen from here, for judging how old a value is. Wall clocks play no part: they may be
/// wrong by years on either side. Safe for several threads.
/// </summary>
public sealed class DaemonClock
{
    // A machine that slept stops its monotonic clock and not its wall clock. A corrected wall clock looks the same, and costs one question.
    private static readonly TimeSpan SleepNoticed = TimeSpan.FromMilliseconds(500);

    /// <summary>Older than this, a load says nothing about the car any more. Common practice, no published source.</summary>
    public static readonly TimeSpan HeldAtMost = TimeSpan.FromSeconds(60);

    private readonly TimeProvider _time;
    private readonly Lock _gate = new();
    private Sighting? _best;
    private DateTimeOffset _wall;
    private long _wallAt;

    /// <summary>A clock that nobody has asked yet.</summary>
    public DaemonClock(TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(time);
        _time = time;
        (_wall, _wallAt) = (time.GetUtcNow(), time.GetTimestamp());
    }

    /// <summary>Told when the clock is no longer trusted and should be asked again at once.</summary>
    public event Action? Questioned;

    /// <summary>Start of the daemon that answered last; absent before the first answer.</summary>
    public string? StartId
    {
        get
        {
            lock (_gate)
                return _best?.StartId;
        }
    }

    /// <summary>Round trip of the answer in use; absent while the clock is not known or no longer trusted.</summary>
    public TimeSpan? RoundTrip
    {
        get
        {
            lock (_gate)
                return _best?.RoundTrip;
        }
    }

    /// <summary>Takes an answer. Of one run the answer with the shortest round trip is kept; a new run starts afresh.</summary>
    /// <param name="startId">The start of the daemon that answered.</param>
    /// <param name="daemonNs">What its clock said, ns.</param>
    /// <param name="askedAt"><see cref="TimeProvider.GetTimestamp"/> when the question left.</param>
    /// <param name="answeredAt">The same when the answer had come.</param>
    public void Take(string startId, long daemonNs, long askedAt, long answeredAt)
    {
        lock (_gate)
        {
            if (HasSlept())
                _best = null;
            var next = new Sighting(startId, daemonNs, askedAt, _time.GetElapsedTime(askedAt, answeredAt));
            if (_best is not { } best || best.StartId != next.StartId || Contradicts(best, next)
                || best.IsBeatenBy(next.RoundTrip, _time.GetElapsedTime(best.AskedAt, askedAt)))
                _best = next;
        }
    }

    /// <summary>
    /// Age of a value now, too old by at most one round trip and never too young. Nothing when it cannot be told: the clock
    /// has not answered, another run made the value, or the clock has been found wrong.
    /// </summary>
    /// <param name="startId">The start of the daemon that made the value.</param>
    /// <param name="valueNs">The instant that the value describes, ns on the daemon's clock.</param>
    public TimeSpan? AgeOf(string startId, long valueNs)
    {
        bool isUnsure;
        TimeSpan? age = null;
        lock (_gate)
        {
            isUnsure = HasSlept() || _best?.StartId != startId;
            if (!isUnsure)
            {
                var elapsed = _time.GetElapsedTime(_best!.AskedAt);
                age = TimeSpan.FromTicks((_best.LatestNow(elapsed) - valueNs) / 100);
                isUnsure = age < -Sighting.Drift(elapsed);
            }

            if (isUnsure && _best?.StartId == startId)
                _best = null;
        }

        if (isUnsure)
            Questioned?.Invoke();
        return isUnsure ? null : age < TimeSpan.Zero ? TimeSpan.Zero : age;
    }

    /// <summary>What a reader may do with a value now, and how old it is where that can be told.</summary>
    /// <param name="startId">The start of the daemon that made the value.</param>
    /// <param name="valueNs">The instant that the value describes, ns on the daemon's clock.</param>
    /// <param name="maxAgeMs">Older than this it is not live.</param>
    public (Freshness Freshness, TimeSpan? Age) Judge(string startId, long valueNs, double maxAgeMs)
    {
        var age = AgeOf(startId, valueNs);
        // Another run: its clock and its sequence say nothing about this value.
        if (age is null && StartId is { } run && run != startId || age > HeldAtMost)
            return (Freshness.Absent, null);
        return (age?.TotalMilliseconds <= maxAgeMs ? Freshness.Live : Freshness.Held, age);
    }

    // Both answers bracket the same offset. Brackets that do not meet mean that one of the clocks stood still in between.
    private bool Contradicts(Sighting old, Sighting next)
    {
        var elapsed = _time.GetElapsedTime(old.AskedAt, next.AskedAt);
        var apart = TimeSpan.FromTicks((next.DaemonNs - old.LatestNow(elapsed)) / 100);
        var slack = Sighting.Drift(elapsed);
        return apart > next.RoundTrip + slack || apart < -old.RoundTrip - slack;
    }

    private bool HasSlept()
    {
        var (wall, at) = (_time.GetUtcNow(), _time.GetTimestamp());
        var slept = (wall - _wall - _time.GetElapsedTime(_wallAt, at)).Duration() > SleepNoticed;
        (_wall, _wallAt) = (wall, at);
        return slept;
    }
}
