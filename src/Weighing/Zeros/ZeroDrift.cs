using ScaleLink.Weighing.Statistics;

namespace ScaleLink.Weighing.Zeros;

/// <summary>One zero of a pad's history.</summary>
/// <param name="Time">When, UTC.</param>
/// <param name="Kg">Shift from the zero of the calibration procedure.</param>
/// <param name="TemperatureC">Of the pad, where known.</param>
readonly record struct ZeroPoint(DateTimeOffset Time, double Kg, double? TemperatureC = null);

/// <summary>How a pad's zeros move.</summary>
/// <param name="KgPerKelvin">By temperature; null where that cannot be told.</param>
/// <param name="KgPerDay">By time, temperature taken out where known; null where that cannot be told.</param>
/// <param name="SpreadKg">Largest minus smallest.</param>
/// <param name="Findings">What is beyond the limits.</param>
sealed record ZeroDriftResult(double? KgPerKelvin, double? KgPerDay, double SpreadKg, IReadOnlyList<Diagnostic> Findings);

/// <summary>Looks through the zeros of one pad for drift.</summary>
static class ZeroDrift
{
    /// <summary>Zero may move by this many intervals e within 5 K. Source: OIML R 76-1:2006, 3.9.2.3.</summary>
    public const double IntervalsPerFiveKelvin = 1;

    // Less of it cannot be told from the repeatability of zeros.
    const double LeastKelvin = 2;
    static readonly TimeSpan LeastTime = TimeSpan.FromHours(1);

    /// <summary>Judges the history, in the order of time.</summary>
    /// <param name="zeros">Since the last calibration procedure.</param>
    /// <param name="intervalKg">Interval e, kg.</param>
    /// <param name="limitKgPerDay">Beyond this the drift in time is a finding (common practice, no published source).</param>
    public static ZeroDriftResult Judge(IReadOnlyList<ZeroPoint> zeros, double intervalKg, double limitKgPerDay = 0.5)
    {
        ArgumentNullException.ThrowIfNull(zeros);
        var spread = zeros.Count == 0 ? 0 : zeros.Max(z => z.Kg) - zeros.Min(z => z.Kg);
        var (byKelvin, byDay) = Slopes(zeros);
        List<Diagnostic> findings = [];
        var perKelvin = IntervalsPerFiveKelvin * intervalKg / 5;
        if (byKelvin is { } k && Math.Abs(k.Value) - 2 * k.StandardUncertainty > perKelvin)
            findings.Add(CalibrationCodes.ZeroDrifts.Because($"{Kg(k.Value):+0.000} per kelvin, at most {BareKg(perKelvin):0.000} either way"));
        if (byDay is { } d && Math.Abs(d.Value) - 2 * d.StandardUncertainty > limitKgPerDay)
            findings.Add(CalibrationCodes.ZeroDrifts.Because($"{Kg(d.Value):+0.00} a day, at most {BareKg(limitKgPerDay):0.00} either way"));
        return new ZeroDriftResult(byKelvin?.Value, byDay?.Value, spread, findings);
    }

    static ((double Value, double StandardUncertainty)? Kelvin, (double Value, double StandardUncertainty)? Day) Slopes(IReadOnlyList<ZeroPoint> zeros)
    {
        var warm = zeros.Count > 0 && zeros.All(z => z.TemperatureC is not null)
            && zeros.Max(z => z.TemperatureC) - zeros.Min(z => z.TemperatureC) >= LeastKelvin;
        var old = zeros.Count > 0 && zeros[^1].Time - zeros[0].Time >= LeastTime;
        List<Func<int, double>> columns = [_ => 1];
        if (warm)
            columns.Add(i => zeros[i].TemperatureC!.Value - zeros[0].TemperatureC!.Value);
        if (old)
            columns.Add(i => (zeros[i].Time - zeros[0].Time).TotalDays);
        if (columns.Count == 1 || zeros.Count < columns.Count + 1)
            return (null, null);
        var design = Design.Of(zeros.Count, [.. columns]);
        if (!HouseholderQr.Of(design).FullRank)
            return (null, null);

        var fit = LeastSquares.Fit(design, [.. zeros.Select(z => z.Kg)]);
        (double, double)? Slope(bool known, int column) => known ? (fit.Coefficients[column], fit.StandardDeviation(column)) : null;
        return (Slope(warm, 1), Slope(old, columns.Count - 1));
    }
}
