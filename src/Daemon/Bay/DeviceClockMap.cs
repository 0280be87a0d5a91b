using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Bay;

/// <summary>
/// Carries the pad's clock over to the daemon's. Adapters hold bytes back by up to 16 ms, never forward, so the truth lies along the lower edge
/// of arrival against device time: the least delay of each second is kept, and the edge of their lower convex hull above the middle gives offset and drift
/// (linear programming bound for one-way clocks: S. Moon, P. Skelly, D. Towsley, INFOCOM 1999; from memory).
/// Two pads are then skewed by no more than the difference of their shortest delays.
/// </summary>
internal sealed class DeviceClockMap
{
    private const long BucketNs = Nanoseconds.PerSecond;
    private const int MostBuckets = 120;
    // Fewer seconds than this tell nothing of the drift.
    private const int FewestForDrift = 8;
    // Crystals stay within 200 ppm of each other; a steeper line is a late host, not a clock.
    private const double MostDrift = 1e-3;
    // A pad that seems to speak from the future has started anew; one that stays this late for a whole second has slept.
    private const long JumpNs = 2 * Nanoseconds.PerSecond;

    private readonly List<(long Device, long Delay)> _hull = [];
    private readonly Queue<(long Device, long Delay)> _buckets = new();
    private (long Device, long Delay) _best;
    private long _bucketEnd = long.MinValue;
    private uint _lastMicroseconds;
    private long _deviceNs;
    private long _lastMapped = long.MinValue;
    private long _originDevice, _originDelay;
    private double _slope;
    private bool _started;
    private double _jitterNs;

    /// <summary>How fast the pad's clock runs against the daemon's, parts per million; positive: fast. Absent until some seconds have passed.</summary>
    public double? DriftPpm => _buckets.Count >= FewestForDrift ? -_slope * 1e6 : null;

    /// <summary>Mean delay of the bytes beyond the shortest, ms.</summary>
    public double JitterMs => _jitterNs / Nanoseconds.PerMillisecond;

    /// <summary>Instant of the sample on the daemon's clock, ns: never after its arrival, never before an earlier sample's.</summary>
    public long Map(uint deviceMicroseconds, long arrivalNs)
    {
        var step = (long)(uint)(deviceMicroseconds - _lastMicroseconds) * Nanoseconds.PerMicrosecond;
        _lastMicroseconds = deviceMicroseconds;
        _deviceNs += step;
        if (!_started || DelayAt(_deviceNs) - (arrivalNs - _deviceNs) > JumpNs)
            Restart(arrivalNs);
        Note(arrivalNs);
        var mapped = Math.Min(_deviceNs + DelayAt(_deviceNs), arrivalNs);
        _jitterNs += ((arrivalNs - mapped) - _jitterNs) / 256;
        _lastMapped = Math.Max(mapped, _lastMapped + 1);
        return _lastMapped;
    }

    private void Restart(long arrivalNs)
    {
        _buckets.Clear();
        _deviceNs = 0;
        (_originDevice, _originDelay, _slope, _jitterNs) = (0, arrivalNs, 0, 0);
        _best = (0, arrivalNs);
        _bucketEnd = BucketNs;
        _started = true;
    }

    private void Note(long arrivalNs)
    {
        var delay = arrivalNs - _deviceNs;
        if (_deviceNs >= _bucketEnd && _best.Delay - DelayAt(_deviceNs) > JumpNs)
        {
            Restart(arrivalNs);
        }
        else if (_deviceNs >= _bucketEnd)
        {
            _buckets.Enqueue(_best);
            if (_buckets.Count > MostBuckets)
                _buckets.Dequeue();
            _bucketEnd = _deviceNs + BucketNs;
            _best = (_deviceNs, delay);
            FitLowerEdge();
        }
        else if (delay < _best.Delay)
        {
            _best = (_deviceNs, delay);
        }

        // A shorter delay than the line allows shows that the line lies too high: follow at once.
        _originDelay -= Math.Max(0, DelayAt(_deviceNs) - (arrivalNs - _deviceNs));
    }

    private long DelayAt(long device) => _originDelay + (long)(_slope * (device - _originDevice));

    private void FitLowerEdge()
    {
        if (_buckets.Count < FewestForDrift)
        {
            (_originDevice, _originDelay) = _buckets.MinBy(b => b.Delay);
            _slope = 0;
            return;
        }

        _hull.Clear();
        foreach (var point in _buckets)
        {
            while (_hull.Count >= 2 && !TurnsUp(_hull[^2], _hull[^1], point))
                _hull.RemoveAt(_hull.Count - 1);
            _hull.Add(point);
        }

        var middle = (long)_buckets.Average(b => b.Device);
        var right = Math.Max(1, _hull.FindIndex(p => p.Device > middle));
        var (a, b) = (_hull[right - 1], _hull[right]);
        var slope = (b.Delay - a.Delay) / (double)(b.Device - a.Device);
        _slope = Math.Clamp(slope, -MostDrift, MostDrift);
        (_originDevice, _originDelay) = a;
    }

    private static bool TurnsUp((long Device, long Delay) a, (long Device, long Delay) b, (long Device, long Delay) c) =>
        (double)(b.Delay - a.Delay) * (c.Device - b.Device) < (double)(c.Delay - b.Delay) * (b.Device - a.Device);
}
