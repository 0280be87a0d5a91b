using ScaleLink.Weighing.Pads;
using ScaleLink.Weighing.Statistics;

namespace ScaleLink.Weighing.Calibration.Fitting;

/// <summary>A piece of ballast as the calibration procedure found it.</summary>
readonly record struct BallastMass(string Label, double Kg, double StandardUncertaintyKg);

/// <summary>The curve through the points of a calibration procedure.</summary>
sealed record CurveFit
{
    /// <summary>1 for a line, 2 for a quadratic.</summary>
    public required int Order { get; init; }

    /// <summary>How the order was chosen, and how well it fits.</summary>
    public required ModelChoice Choice { get; init; }

    /// <summary>Counts at which the curve gives nothing, for the zero of the last repetition.</summary>
    public required double ZeroCounts { get; init; }

    /// <summary>Its standard uncertainty by repeatability.</summary>
    public required double ZeroUncertaintyCounts { get; init; }

    /// <summary>Slope there, kg per count.</summary>
    public required double SpanKgPerCount { get; init; }

    /// <summary>kg per count squared.</summary>
    public required double CurvatureKgPerCount2 { get; init; }

    /// <summary>By repeatability of the points, with <see cref="ModelChoice.Fit"/>'s degrees of freedom.</summary>
    public required CurveCovariance Repeatability { get; init; }

    /// <summary>By the masses, lots erring together.</summary>
    public required CurveCovariance MassesTogether { get; init; }

    /// <summary>By the masses, each erring by itself.</summary>
    public required CurveCovariance MassesApart { get; init; }

    /// <summary>
    /// Where a line was chosen: the largest bow between zero and the highest load that the points do not rule out, 95 %,
    /// kg. Zero for a curve; null where the points could not show a bow at all.
    /// </summary>
    public required double? BowLimitKg { get; init; }

    /// <summary>What stood in for masses not owned.</summary>
    public required IReadOnlyList<BallastMass> Ballast { get; init; }

    /// <summary>Standard deviation of placing the same load again, net of the repetition's zero, kg; null without repeats.</summary>
    public double? RepeatSdKg { get; init; }

    /// <summary>Its degrees of freedom.</summary>
    public int RepeatDegreesOfFreedom { get; init; }

    /// <summary>Known mass minus curve, one a point, kg.</summary>
    public IReadOnlyList<double> ResidualsKg => Choice.Fit.Residuals;
}
