namespace ScaleLink.Board.Age;

/// <summary>One answer to "what does your clock say?".</summary>
/// <param name="RunId">The run of the daemon that answered.</param>
/// <param name="DaemonNs">Its monotonic clock, ns.</param>
/// <param name="AskedAt">This page's timestamp when the question left.</param>
/// <param name="RoundTrip">From question to answer.</param>
internal sealed record Sighting(string RunId, long DaemonNs, long AskedAt, TimeSpan RoundTrip)
{
    // Two crystals apart: 100 ppm is more than a computer's clock is allowed.
    private const double MostDrift = 1e-4;

    /// <summary>The latest that the daemon's clock can be: it answered after the question left. Ages from it are never too young.</summary>
    public long LatestNow(TimeSpan sinceAsked) => DaemonNs + sinceAsked.Ticks * 100;

    /// <summary>How far the two clocks may have gone apart since.</summary>
    public static TimeSpan Drift(TimeSpan sinceAsked) => TimeSpan.FromMilliseconds(1) + sinceAsked * MostDrift;

    /// <summary>Whether <paramref name="next"/>, asked so much later, should take this one's place.</summary>
    public bool GivesWayTo(Sighting next, TimeSpan later)
    {
        var slack = Drift(later);
        var apart = TimeSpan.FromTicks((next.DaemonNs - LatestNow(later)) / 100);
        // Both answers bracket the same offset. Brackets that do not meet mean that one of the clocks stood still in between.
        var meets = apart <= next.RoundTrip + slack && apart >= -RoundTrip - slack;
        return !meets || RunId != next.RunId || next.RoundTrip <= RoundTrip + slack;
    }
}
