namespace ScaleLink.Measure.Age;

/// <summary>One answer to "what does your clock say?".</summary>
/// <param name="StartId">The start of the daemon that answered.</param>
/// <param name="DaemonNs">Its monotonic clock, ns.</param>
/// <param name="AskedAt">Own timestamp when the question left.</param>
/// <param name="RoundTrip">From question to answer.</param>
internal sealed record Sighting(string StartId, long DaemonNs, long AskedAt, TimeSpan RoundTrip)
{
    // Two crystals apart: 100 ppm is more than any computer's clock is allowed.
    private const double MostDrift = 1e-4;

    /// <summary>
    /// The latest that the daemon's clock can be by now, ns: it answered after the question left. Ages computed from it
    /// are too old by at most the round trip, and never too young.
    /// </summary>
    public long LatestNow(TimeSpan sinceAsked) => DaemonNs + sinceAsked.Ticks * 100;

    /// <summary>How far the two clocks may have gone apart since.</summary>
    public static TimeSpan Drift(TimeSpan sinceAsked) => TimeSpan.FromMilliseconds(1) + sinceAsked * MostDrift;

    /// <summary>Whether a newer answer tells more than this one, which drift has made worse since.</summary>
    public bool IsBeatenBy(TimeSpan roundTrip, TimeSpan sinceAsked) => roundTrip <= RoundTrip + Drift(sinceAsked);
}
