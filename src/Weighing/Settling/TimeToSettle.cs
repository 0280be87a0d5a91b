namespace ScaleLink.Weighing.Settling;

/// <summary>
/// Expects when the car will be settled from how fast the uncertainty shrinks: a straight line through its logarithm over
/// the last second.
/// </summary>
sealed class TimeToSettle(double tolerance)
{
    const int Look = 20;
    const int Least = 8;
    const double HoldSeconds = 0.3;
    const double Farthest = 30;

    readonly double[] _logs = new double[Look];
    int _count;

    /// <summary>One more block. <paramref name="expanded"/>: largest expanded uncertainty of the four, kg; null: none.</summary>
    public void Add(double? expanded)
    {
        if (expanded is { } wide) _logs[_count++ % Look] = Math.Log(wide);
        else _count = 0;
    }

    public void Clear() => _count = 0;

    /// <summary>Seconds until settled, or null when the uncertainty does not shrink or too little was seen.</summary>
    public double? Seconds()
    {
        var n = Math.Min(_count, Look);
        if (n < Least) return null;
        double mean = 0, slope = 0, spread = 0;
        for (var i = 0; i < n; i++) mean += _logs[(_count - n + i) % Look] / n;
        for (var i = 0; i < n; i++)
        {
            var x = i - (n - 1) / 2.0;
            slope += x * (_logs[(_count - n + i) % Look] - mean);
            spread += x * x;
        }
        slope /= spread;
        var above = mean + slope * (n - 1) / 2.0 - Math.Log(tolerance);
        if (above <= 0) return HoldSeconds;
        var left = slope < 0 ? above / -slope * SettlingEstimator.BlockSeconds + HoldSeconds : double.PositiveInfinity;
        return left <= Farthest ? left : null;
    }
}
