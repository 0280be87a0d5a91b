using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Faces;

/// <summary>Lets readings through at a rate, and a change of verdict at once: a pad that goes missing must not wait for its turn.</summary>
internal sealed class Pace(double rateHz)
{
    private readonly long _periodNs = (long)(Nanoseconds.PerSecond / rateHz);
    private long _due = long.MinValue;
    private BayVerdict? _verdict;

    public bool IsDue(BayReading reading)
    {
        // Half a block of slack: readings come in steps of a block, and a period that is a whole number of blocks must not slip by one.
        var isDue = reading.AtNs >= _due - BlockClock.LengthNs / 2 || reading.Verdict != _verdict;
        if (isDue)
            _due = Math.Max(_due + _periodNs, reading.AtNs + _periodNs / 2);
        _verdict = reading.Verdict;
        return isDue;
    }

    /// <summary>How long a value may be shown as live: two messages may be missed, and never less than three quarters of a second.</summary>
    public double MaxAgeMs => Math.Max(750, 2.5 * Nanoseconds.ToMilliseconds(_periodNs));
}
