namespace ScaleLink.Weighing.Zeros;

/// <summary>Settings of zero tracking.</summary>
sealed record ZeroTrackingOptions
{
    /// <summary>Off unless asked for: tracking also hides what a drifting cell would show.</summary>
    public bool Enabled { get; init; }

    /// <summary>Interval of the indication d, kg.</summary>
    public double IntervalKg { get; init; } = 0.1;

    /// <summary>Fastest correction, d per second. OIML R 76-1:2006, 4.5.7, allows 0.5.</summary>
    public double IntervalsPerSecond { get; init; } = 0.5;

    /// <summary>Only readings this near to zero are tracked, d; further off is a load.</summary>
    public double WindowIntervals { get; init; } = 0.5;

    /// <summary>Sum of corrections either way, share of the capacity. OIML R 76-1:2006, 4.5.1: 4 % of Max in all.</summary>
    public double CapacityShare { get; init; } = 0.02;
}

/// <summary>What tracking has done since the zero was weighed.</summary>
/// <param name="SumKg">Sum of all corrections, for the log; added to the weighed zero.</param>
readonly record struct ZeroTrack(double SumKg);

/// <summary>
/// Follows slow drift of an empty pad within the limits of OIML R 76-1:2006, 4.5.7: at zero, at rest, and no faster than
/// half an interval a second. Pure: the caller keeps the track and says how much time has passed.
/// </summary>
static class ZeroTracking
{
    /// <summary>The track after <paramref name="elapsed"/>.</summary>
    /// <param name="track">So far.</param>
    /// <param name="loadKg">Load with the weighed zero and the track so far taken off.</param>
    /// <param name="settled">True at rest.</param>
    /// <param name="elapsed">Since the step before.</param>
    /// <param name="capacityKg">Of the pad.</param>
    /// <param name="options">Settings.</param>
    public static ZeroTrack Step(
        ZeroTrack track, double loadKg, bool settled, TimeSpan elapsed, double capacityKg, ZeroTrackingOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        var atZero = Math.Abs(loadKg) <= options.WindowIntervals * options.IntervalKg;
        if (!options.Enabled || !settled || !atZero || elapsed <= TimeSpan.Zero)
            return track;

        var most = options.IntervalsPerSecond * options.IntervalKg * elapsed.TotalSeconds;
        var limit = options.CapacityShare * capacityKg;
        return new ZeroTrack(Math.Clamp(track.SumKg + Math.Clamp(loadKg, -most, most), -limit, limit));
    }
}
