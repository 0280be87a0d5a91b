using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Bay;

/// <summary>
/// Judges silence by the time that was really watched. When the daemon itself was held up (a suspended machine, a starved processor)
/// the bytes wait in the system's buffers: a late tick counts no more than a punctual one would, so it condemns no pad.
/// </summary>
internal sealed class SilenceWatch
{
    private const long LongestTickNs = 40 * Nanoseconds.PerMillisecond;
    private const long ShortestLimitNs = 500 * Nanoseconds.PerMillisecond;
    private const int PeriodsAllowed = 5;

    private long _watchedNs;
    private long _lastTickNs = long.MinValue;

    /// <summary>A sample came.</summary>
    public void Heard() => _watchedNs = 0;

    /// <summary>True once nothing has been heard for the longer of five sample periods and half a second.</summary>
    public bool Tick(long nowNs, double rateHz)
    {
        if (_lastTickNs != long.MinValue)
            _watchedNs += Math.Clamp(nowNs - _lastTickNs, 0, LongestTickNs);
        _lastTickNs = nowNs;
        return _watchedNs > Limit(rateHz);
    }

    private static long Limit(double rateHz) =>
        rateHz > 0 ? Math.Max(ShortestLimitNs, (long)(PeriodsAllowed * Nanoseconds.PerSecond / rateHz)) : ShortestLimitNs;
}
