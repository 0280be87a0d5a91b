using ScaleLink.Weighing.Calibration.Masses;
using ScaleLink.Weighing.Statistics;

namespace ScaleLink.Weighing.Calibration.Fitting;

/// <summary>Draws the curve of a calibration procedure by least squares and carries repeatability and masses into its covariance.</summary>
static class CurveFitter
{
    /// <summary>Fits the points; the order of the curve follows the evidence.</summary>
    /// <param name="masses">On the pad.</param>
    /// <param name="points">In the order read.</param>
    /// <param name="loopApart">See <see cref="Procedure.ProcedureInput.LoopApart"/>.</param>
    /// <exception cref="RefusedException">SL-314 too few points; SL-324 ballast that known masses never met.</exception>
    public static CurveFit Fit(MassSet masses, IReadOnlyList<ProcedurePoint> points, bool loopApart = true)
    {
        ArgumentNullException.ThrowIfNull(points);
        var design = Checked(masses, points);
        // Three loads fix a parabola exactly and leave nothing to check it by.
        double[][,] ladder = Loads(points) > 3 ? [design.Line, design.Quadratic] : [design.Line];
        var repeats = design.Repeats;
        var choice = ModelChoice.Choose(design.Y, ladder, repeats, design.X);
        // Wrong masses bend a straight pad; a bow that they explain is no evidence against the pad.
        if (choice.Rung > 0 && !Outweighs(design, choice))
            choice = ModelChoice.Choose(design.Y, ladder[..1], repeats, design.X);
        return Described(design, choice, ladder, repeats, loopApart);
    }

    /// <summary>The equations of the points, when they can be solved at all.</summary>
    /// <exception cref="RefusedException">SL-314 too few points; SL-324 ballast that known masses never met.</exception>
    public static ProcedureDesign Checked(MassSet masses, IReadOnlyList<ProcedurePoint> points)
    {
        if (Loads(points) < 3)
            throw new RefusedException(CalibrationCodes.TooFewPoints.Because($"{Loads(points)} different loads; a line that can be checked needs 3, the empty pad being one"));
        var design = new ProcedureDesign(masses, points);
        var line = design.Line;
        if (points.Count < line.GetLength(1) + 2)
            throw new RefusedException(CalibrationCodes.TooFewPoints.Because($"{points.Count} points for {line.GetLength(1)} unknowns; add {line.GetLength(1) + 2 - points.Count}"));
        if (!HouseholderQr.Of(line).FullRank)
            throw new RefusedException(CalibrationCodes.BallastNotCompared.Because(string.Join(", ", design.Ballast)));
        return design;
    }

    static int Loads(IReadOnlyList<ProcedurePoint> points) => points.Select(p => p.Load).Distinct().Count();

    static bool Outweighs(ProcedureDesign design, ModelChoice choice)
    {
        var curve = new CurveTransform(design, choice.Fit, design.Quadratic, order: 2);
        var byMasses = Math.Sqrt(curve.Carry(design.SingleErrors).CurvatureCurvature);
        return Math.Abs(curve.Curvature) > Coverage.Factor(probability: 1 - ModelChoice.StepChance) * byMasses;
    }

    static CurveFit Described(ProcedureDesign design, ModelChoice choice, double[][,] ladder, double[,]? repeats, bool loopApart)
    {
        var order = choice.Rung + 1;
        var curve = new CurveTransform(design, choice.Fit, ladder[choice.Rung], order);
        // What the loop between the ways leaves over is no repeatability: it has a term of its own in the budget, and nothing counts
        // twice (JCGM 100:2008, 4.3.10).
        var noise = loopApart && design.WithLoop(order) is { } loop ? LeastSquares.Fit(loop, design.Y) : choice.Fit;
        var repeatability = curve.Noise().Scaled(choice.Fit.ResidualSd > 0 ? Math.Pow(noise.ResidualSd / choice.Fit.ResidualSd, 2) : 1);
        var pure = repeats is null ? null : LeastSquares.Fit(repeats, choice.Fit.Residuals);
        return new CurveFit
        {
            Order = order,
            Choice = choice,
            ZeroCounts = curve.ZeroCounts,
            ZeroUncertaintyCounts = curve.ZeroUncertaintyCounts,
            SpanKgPerCount = curve.Span,
            CurvatureKgPerCount2 = curve.Curvature,
            Repeatability = repeatability,
            RepeatabilityDegreesOfFreedom = noise.DegreesOfFreedom,
            MassesTogether = curve.Carry(design.LotErrors),
            MassesApart = curve.Carry(design.SingleErrors),
            BowLimitKg = order == 1 ? BowLimit(design, loopApart) : 0,
            Ballast = curve.Ballast(),
            RepeatSdKg = pure?.ResidualSd,
            RepeatDegreesOfFreedom = pure?.DegreesOfFreedom ?? 0,
        };
    }

    // A bow too faint to be told from repeatability is left out of the curve, and must not be left out of the uncertainty.
    static double? BowLimit(ProcedureDesign design, bool loopApart)
    {
        if (!ModelChoice.Carries(design.Quadratic, design.Repeats))
            return null;
        var bent = LeastSquares.Fit((loopApart ? design.WithLoop(2) : null) ?? design.Quadratic, design.Y);
        var column = design.Repetitions.Count + 1;
        var limit = Math.Abs(bent.Coefficients[column])
            + Coverage.Factor(bent.DegreesOfFreedom) * bent.StandardDeviation(column);
        // A parabola and the line fitted to it differ most half way: a quarter of the coefficient over 0..1.
        return limit / 4;
    }
}
