using ScaleLink.Api.V1;
using ScaleLink.Measure.Age;

namespace ScaleLink.Api;

/// <summary>The daemon's clock and the stamps of its values, as they travel.</summary>
public static class WireClocks
{
    /// <summary>Takes an answer of Feed.GetClock.</summary>
    public static void Take(this DaemonClock clock, GetClockResponse answer, long askedAt, long answeredAt)
    {
        ArgumentNullException.ThrowIfNull(clock);
        ArgumentNullException.ThrowIfNull(answer);
        clock.Take(answer.StartId, answer.MonotonicNs, askedAt, answeredAt);
    }

    /// <summary>Age of a stamped value now; nothing when it cannot be told.</summary>
    public static TimeSpan? AgeOf(this DaemonClock clock, Stamp? stamp)
    {
        ArgumentNullException.ThrowIfNull(clock);
        return stamp is null ? null : clock.AgeOf(stamp.StartId, stamp.MonotonicNs);
    }

    /// <summary>What a reader may do with a stamped value now, and how old it is where that can be told.</summary>
    public static (Freshness Freshness, TimeSpan? Age) Judge(this DaemonClock clock, Stamp? stamp)
    {
        ArgumentNullException.ThrowIfNull(clock);
        return stamp is null ? (Freshness.Absent, null) : clock.Judge(stamp.StartId, stamp.MonotonicNs, stamp.MaxAgeMs);
    }
}
