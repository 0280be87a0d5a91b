namespace ScaleLink.Weighing.Calibration.Results;

/// <summary>Accuracy classes of weighing instruments. Source: OIML R 76-1:2006.</summary>
enum AccuracyClass
{
    /// <summary>Special.</summary>
    I,
    /// <summary>High.</summary>
    II,
    /// <summary>Medium: shop and industrial scales, and the accuracy class for a pad.</summary>
    III,
    /// <summary>Ordinary.</summary>
    IIII,
}

/// <summary>Maximum permissible errors on initial verification. Source: OIML R 76-1:2006, Table 6.</summary>
static class ErrorLimits
{
    // Up to so many intervals e the error may be half an interval, then one, then one and a half.
    static readonly Dictionary<AccuracyClass, (double Half, double One, double OneAndHalf)> Steps = new()
    {
        [AccuracyClass.I] = (50000, 200000, double.PositiveInfinity),
        [AccuracyClass.II] = (5000, 20000, 100000),
        [AccuracyClass.III] = (500, 2000, 10000),
        [AccuracyClass.IIII] = (50, 200, 1000),
    };

    /// <summary>Largest part of the limit that the error of the test masses may take up (R 76-1, 3.7.1).</summary>
    public const double MassesShare = 1.0 / 3.0;

    /// <summary>Permissible error either way, kg; null beyond the last row of the class.</summary>
    /// <param name="weighing">Class.</param>
    /// <param name="loadKg">Load, kg, zero or more.</param>
    /// <param name="intervalKg">Verification interval e, kg.</param>
    public static double? Kg(AccuracyClass weighing, double loadKg, double intervalKg)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(intervalKg);
        ArgumentOutOfRangeException.ThrowIfNegative(loadKg);
        return Factor(weighing, loadKg / intervalKg) * intervalKg;
    }

    /// <summary>The limits as steps from zero up, kg.</summary>
    public static IReadOnlyList<(double UpToKg, double LimitKg)> StepsKg(AccuracyClass weighing, double intervalKg)
    {
        var (half, one, oneAndHalf) = Steps[weighing];
        return [(half * intervalKg, 0.5 * intervalKg), (one * intervalKg, intervalKg), (oneAndHalf * intervalKg, 1.5 * intervalKg)];
    }

    /// <summary>Permissible error in service, kg: twice that on initial verification (R 76-1, 3.5.2, from memory); null beyond the last row of the class.</summary>
    /// <param name="weighing">Class.</param>
    /// <param name="loadKg">Load, kg, zero or more.</param>
    /// <param name="intervalKg">Verification interval e, kg.</param>
    public static double? InServiceKg(AccuracyClass weighing, double loadKg, double intervalKg) => 2 * Kg(weighing, loadKg, intervalKg);

    /// <summary>The same in intervals, for a load in intervals.</summary>
    public static double? Factor(AccuracyClass weighing, double loadInIntervals)
    {
        var (half, one, oneAndHalf) = Steps[weighing];
        return loadInIntervals <= half ? 0.5
            : loadInIntervals <= one ? 1.0
            : loadInIntervals <= oneAndHalf ? 1.5
            : null;
    }
}
