using ScaleLink.Api.V1;

namespace ScaleLink.Board.Age;

/// <summary>The daemon's monotonic clock as seen from this page, for judging how old a value is. The clocks of phones are wrong, so wall clocks play no part.</summary>
internal sealed class DaemonClock
{
    // A device that slept stops its monotonic clock and not its wall clock. A corrected wall clock looks the same, and costs one question.
    private static readonly TimeSpan SleepNoticed = TimeSpan.FromMilliseconds(500);

    private readonly TimeProvider _time;
    private Sighting? _best;
    private DateTimeOffset _wall;
    private long _wallAt;

    public DaemonClock(TimeProvider time)
    {
        _time = time;
        (_wall, _wallAt) = (time.GetUtcNow(), time.GetTimestamp());
    }

    /// <summary>The run that answered; absent while the clock is not known or no longer trusted.</summary>
    public string? RunId => _best?.RunId;

    /// <summary>Round trip of the answer in use.</summary>
    public TimeSpan? RoundTrip => _best?.RoundTrip;

    /// <summary>Takes an answer of Feed.GetClock that has just come. Of one run the answer with the shortest round trip is kept.</summary>
    public void Take(GetClockResponse answer, long askedAt)
    {
        if (HasSlept())
            _best = null;
        var next = new Sighting(answer.RunId, answer.MonotonicNs, askedAt, _time.GetElapsedTime(askedAt));
        if (_best is null || _best.GivesWayTo(next, _time.GetElapsedTime(_best.AskedAt, askedAt)))
            _best = next;
    }

    /// <summary>Age of a value now, too old by at most one round trip and never too young; nothing when it cannot be told.</summary>
    public TimeSpan? AgeOf(Stamp? stamp)
    {
        if (HasSlept())
            _best = null;
        if (stamp is null || _best is not { } best || best.RunId != stamp.RunId)
            return null;
        var elapsed = _time.GetElapsedTime(best.AskedAt);
        var age = TimeSpan.FromTicks((best.LatestNow(elapsed) - stamp.MonotonicNs) / 100);
        if (age >= -Sighting.Drift(elapsed))
            return age < TimeSpan.Zero ? TimeSpan.Zero : age;
        // A value from the future: one of the clocks stood still. Nothing is told until it has been asked again.
        _best = null;
        return null;
    }

    private bool HasSlept()
    {
        var (wall, at) = (_time.GetUtcNow(), _time.GetTimestamp());
        var slept = (wall - _wall - _time.GetElapsedTime(_wallAt, at)).Duration() > SleepNoticed;
        (_wall, _wallAt) = (wall, at);
        return slept;
    }
}
