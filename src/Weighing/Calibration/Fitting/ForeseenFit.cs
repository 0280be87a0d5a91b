using ScaleLink.Weighing.Calibration.Masses;
using ScaleLink.Weighing.Pads;
using ScaleLink.Weighing.Statistics;

namespace ScaleLink.Weighing.Calibration.Fitting;

/// <summary>
/// What a fit of points that are still to be read will leave uncertain: least squares tells it from where the points lie, before any is
/// read (JCGM 100:2008, H.3; the covariance of a straight line holds no reading but their spread).
/// </summary>
/// <param name="Repeatability">Covariance by repeatability.</param>
/// <param name="DegreesOfFreedom">Of it.</param>
/// <param name="MassesTogether">By the masses, lots erring together.</param>
/// <param name="MassesApart">By the masses, each by itself.</param>
/// <param name="BowLimitKg">Bow that the points will not rule out, kg; null where they cannot show one.</param>
/// <param name="RepeatDegreesOfFreedom">Of placing the same load again; 0 without repeats.</param>
sealed record ForeseenFit(
    CurveCovariance Repeatability, int DegreesOfFreedom, CurveCovariance MassesTogether, CurveCovariance MassesApart, double? BowLimitKg, int RepeatDegreesOfFreedom)
{
    // Mean size of a normal error of one standard deviation.
    static readonly double MeanSize = Math.Sqrt(2 / Math.PI);

    /// <summary>For a straight pad whose readings spread by <paramref name="sdKg"/>.</summary>
    /// <param name="masses">On the pad.</param>
    /// <param name="points">With the counts of a straight pad.</param>
    /// <param name="sdKg">Standard deviation of a reading about the curve, kg.</param>
    /// <exception cref="RefusedException">No readings of these loads can ever be fitted: SL-314 or SL-324, as <see cref="CurveFitter"/> says.</exception>
    public static ForeseenFit Of(MassSet masses, IReadOnlyList<ProcedurePoint> points, double sdKg)
    {
        ArgumentNullException.ThrowIfNull(points);
        var design = CurveFitter.Checked(masses, points);
        var curve = new CurveTransform(design, LeastSquares.Fit(design.Line, design.Y), design.Line, order: 1);
        var each = Enumerable.Range(0, points.Count).Select(i => points.Select((_, k) => k == i ? sdKg : 0).ToArray());
        return new ForeseenFit(
            curve.Carry(each), Spare(design.WithLoop(1) ?? design.Line), curve.Carry(design.LotErrors), curve.Carry(design.SingleErrors), Bow(design, sdKg),
            design.Repeats is { } repeats ? Spare(repeats) : 0);
    }

    static double? Bow(ProcedureDesign design, double sdKg)
    {
        if (!ModelChoice.Carries(design.Quadratic, design.Repeats))
            return null;
        var bent = design.WithLoop(2) ?? design.Quadratic;
        var (inverse, column) = (HouseholderQr.Of(bent).PseudoInverse(), design.Repetitions.Count + 1);
        var sd = sdKg * Math.Sqrt(Enumerable.Range(0, inverse.GetLength(1)).Sum(i => inverse[column, i] * inverse[column, i]));
        // As the bow that is found and what is uncertain about it: a quarter of the coefficient half way.
        return (MeanSize + Coverage.Factor(Spare(bent))) * sd / 4;
    }

    static int Spare(double[,] design) => design.GetLength(0) - design.GetLength(1);
}
