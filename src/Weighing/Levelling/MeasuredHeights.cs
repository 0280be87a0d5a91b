using MathNet.Numerics.Distributions;
using ScaleLink.Weighing.Statics;

namespace ScaleLink.Weighing.Levelling;

/// <summary>Heights of the four pad surfaces, mm, relative to their mean: only differences matter to a car.</summary>
/// <param name="HeightsMm">Sum zero.</param>
/// <param name="Covariance">mm².</param>
/// <param name="ClosureMm">Largest amount by which a measurement differs from the adjusted heights; zero when nothing was measured twice.</param>
/// <param name="Spare">Measurements beyond the three that are needed: what the check rests on. Zero: nothing was checked.</param>
sealed record MeasuredHeights(Corners HeightsMm, CornerMatrix Covariance, double ClosureMm, int Spare)
{
    // One good height measurement in a thousand is turned away.
    const double FalseAlarm = 0.001;

    /// <summary>From the four heights above one datum (laser, water level), each with its own error.</summary>
    /// <exception cref="DiagnosticException">A height or its uncertainty is not usable.</exception>
    public static MeasuredHeights FromHeights(in Corners heightsMm, in Corners standardUncertaintiesMm)
    {
        foreach (var corner in Corners.All)
            if (!double.IsFinite(heightsMm[corner]) || !(standardUncertaintiesMm[corner] > 0))
                throw Unusable($"height at {corner}", heightsMm[corner], standardUncertaintiesMm[corner]);
        var centre = CornerMatrix.Diagonal(Corners.Same(1)) - 0.25 * CornerMatrix.Outer(Corners.Same(1), Corners.Same(1));
        return new(centre * heightsMm, centre * CornerMatrix.Diagonal(standardUncertaintiesMm.Map(u => u * u)) * centre, 0, 0);
    }

    /// <summary>
    /// From differences between pads, as many as were measured: weighted least squares. Four round the patch, or all six,
    /// close on themselves and so check each other.
    /// </summary>
    /// <exception cref="DiagnosticException">The differences do not connect all pads, or contradict each other.</exception>
    public static MeasuredHeights FromDifferences(IReadOnlyList<HeightDifference> differences)
    {
        foreach (var d in differences)
            if (!double.IsFinite(d.Mm) || !(d.StandardUncertaintyMm > 0) || d.From == d.To)
                throw Unusable($"difference {d.From} to {d.To}", d.Mm, d.StandardUncertaintyMm);
        // Every pad at the same mean: without this row only differences are known.
        var normal = CornerMatrix.Outer(Corners.Same(1), Corners.Same(1));
        var right = default(Corners);
        foreach (var d in differences)
        {
            var weight = 1 / (d.StandardUncertaintyMm * d.StandardUncertaintyMm);
            normal += weight * CornerMatrix.Outer(Slope(d), Slope(d));
            right += weight * d.Mm * Slope(d);
        }
        if (!Connected(differences))
            throw new DiagnosticException(new Diagnostic(PatchCodes.HeightsIncomplete, $"{differences.Count} differences do not connect all four pads.",
                "Measure round the patch: LF to RF, RF to RR, RR to LR, LR to LF; four close on themselves and check each other."));
        var inverse = normal.Inverse();
        var heights = inverse * right;
        // The pinned mean is no knowledge of a height: take its part out of the covariance again.
        var covariance = inverse - 1.0 / 16 * CornerMatrix.Outer(Corners.Same(1), Corners.Same(1));
        var spare = differences.Count - 3;
        var misfit = differences.Sum(d => Math.Pow((d.Mm - Slope(d).Dot(heights)) / d.StandardUncertaintyMm, 2));
        var worst = differences.MaxBy(d => Math.Abs(d.Mm - Slope(d).Dot(heights)))!;
        var closure = Math.Abs(worst.Mm - Slope(worst).Dot(heights));
        if (spare > 0 && misfit > ChiSquared.InvCDF(spare, 1 - FalseAlarm))
            throw new DiagnosticException(new Diagnostic(PatchCodes.HeightsDisagree,
                $"The differences do not close: {worst.From} to {worst.To} is {Mm(closure):0.00} off the others, more than they are said to be good to.",
                "Measure that one again; then check signs, and that no pad rocks."));
        return new(heights, covariance, closure, spare);
    }

    /// <summary>Tilt of the best plane, and what no plane explains.</summary>
    public PatchShape ShapeUnder(Contacts contacts)
    {
        var (x, y, warp) = (contacts.SlopeAlongX, contacts.SlopeAlongY, contacts.WarpPattern);
        return new(
            Degrees(x), Degrees(y),
            new Value(contacts.WarpOf(HeightsMm), Math.Sqrt(Covariance.VarianceOf(warp)) / 4));

        Value Degrees(Corners gradient) => new(Math.Atan(gradient.Dot(HeightsMm)) * 180 / Math.PI, Math.Sqrt(Covariance.VarianceOf(gradient)) * 180 / Math.PI);
    }

    static Corners Slope(HeightDifference d) => default(Corners).With(d.To, 1).With(d.From, -1);

    static bool Connected(IReadOnlyList<HeightDifference> differences)
    {
        HashSet<Corner> reached = [Corner.LF];
        for (var round = 0; round < 3; round++)
            foreach (var d in differences)
                if (reached.Contains(d.From) || reached.Contains(d.To))
                    reached.UnionWith([d.From, d.To]);
        return reached.Count == 4;
    }

    static DiagnosticException Unusable(string what, double mm, double uncertainty) => new(new Diagnostic(PatchCodes.InputUnusable,
        $"The {what} is {Mm(mm)} within {Mm(uncertainty)}.", "Give a number between two different pads, and a standard uncertainty above zero."));
}
