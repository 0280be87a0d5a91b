using ScaleLink.Weighing.Statistics;

namespace ScaleLink.Weighing.PadInterchange;

/// <summary>
/// Tells the pads' gain errors from the car by weighing it with the pads interchanged. Model: reading = load of the
/// corner x (1 + gain of the pad) + warp of the placement x (+, -, -, +), the last because a car never settles twice with
/// the same friction. The pads must move in the order LF, RF, LR, RR: interchanged in a ring, or crosswise, the pads of
/// one diagonal stay together, and their common error cannot be told from warp; it is the one that cross weight feels.
/// </summary>
static class InterchangeEvaluation
{
    const int Corners4 = 4;

    // Placements that blow the repeatability of readings up by more than this say nothing useful of the gains.
    const double WorstAmplification = 3;

    // A repeatability above this share of the mean load is no noise of settled readings (common practice, no published source).
    const double WorstRepeatability = 0.01;

    /// <summary>The four placements to weigh, from the present one on.</summary>
    public static IReadOnlyList<IReadOnlyList<string>> Placements(IReadOnlyList<string> padAt)
    {
        ArgumentNullException.ThrowIfNull(padAt);
        return [.. Enumerable.Range(0, Corners4).Select(r => (IReadOnlyList<string>)
            [.. Enumerable.Range(0, Corners4).Select(c => padAt[(c + r) % Corners4])])];
    }

    /// <summary>Works the placements out.</summary>
    /// <exception cref="RefusedException">SL-322: the placements cannot separate pads from car; SL-323: the car changed.</exception>
    public static InterchangeResult Evaluate(IReadOnlyList<PadPlacement> placements)
    {
        ArgumentNullException.ThrowIfNull(placements);
        var pads = Pads(placements);
        List<(int Placement, int Corner, int Pad, double Kg)> readings =
        [
            .. placements.SelectMany((p, r) => Enumerable.Range(0, Corners4)
                .Select(c => (r, c, pads.IndexOf(p.PadAt[c]), p.LoadsKg[(Corner)c]))),
        ];
        var means = Corners.From(c => placements.Average(p => p.LoadsKg[c]));
        var design = Matrix(readings, means, placements.Count);
        if (design.GetLength(0) <= design.GetLength(1) || Amplification(design) * means.Sum / Corners4 > WorstAmplification)
            throw new RefusedException(CalibrationCodes.PlacementsAlike.Because($"{placements.Count} placements"));

        var fit = LeastSquares.Fit(design, [.. readings.Select(r => r.Kg - means[(Corner)r.Corner])]);
        if (fit.ResidualSd > WorstRepeatability * means.Sum / Corners4)
            throw new RefusedException(CalibrationCodes.CarChanged.Because($"repeatability {Kg(fit.ResidualSd):0.00}"));
        return Described(fit, pads, means);
    }

    static List<string> Pads(IReadOnlyList<PadPlacement> placements)
    {
        List<string> pads = [.. placements.SelectMany(p => p.PadAt).Distinct()];
        if (pads.Count != Corners4 || placements.Any(p => p.PadAt.Count != Corners4 || p.PadAt.Distinct().Count() != Corners4))
            throw new RefusedException(CalibrationCodes.PlacementsAlike.Because("every placement must name the same four pads, each once"));
        return pads;
    }

    // Columns: change of four loads; gains of three pads against the fourth; warp of all placements but the first.
    // Gains of a few thousandths make the product of gain and load linear to parts in a million.
    static double[,] Matrix(List<(int Placement, int Corner, int Pad, double Kg)> readings, Corners means, int placements)
    {
        List<Func<int, double>> columns = [];
        for (var corner = 0; corner < Corners4; corner++)
            columns.Add(Column(i => readings[i].Corner, corner, _ => 1));
        for (var pad = 0; pad < Corners4 - 1; pad++)
        {
            var own = pad;
            columns.Add(i => means[(Corner)readings[i].Corner] * Sign(readings[i].Pad, own));
        }
        for (var placement = 1; placement < placements; placement++)
            columns.Add(Column(i => readings[i].Placement, placement, i => Warp(readings[i].Corner)));
        return Design.Of(readings.Count, [.. columns]);
    }

    static Func<int, double> Column(Func<int, int> index, int wanted, Func<int, double> value) => i => index(i) == wanted ? value(i) : 0;

    // The gains add up to zero: what one pad has more, the last has less.
    static int Sign(int pad, int own) => pad == own ? 1 : pad == Corners4 - 1 ? -1 : 0;

    static double Warp(int corner) => (Corner)corner is Corner.LF or Corner.RR ? 1 : -1;

    // Largest standard uncertainty of a gain for readings that vary by one kilogram, 1/kg.
    static double Amplification(double[,] design)
    {
        var factor = HouseholderQr.Of(design);
        if (!factor.FullRank)
            return double.PositiveInfinity;
        var covariance = Matrices.Propagate(Gains(design.GetLength(1)), factor.InverseGram());
        return Enumerable.Range(0, Corners4).Max(pad => Math.Sqrt(covariance[pad, pad]));
    }

    // From the coefficients of the fit to the gains of the four pads.
    static double[,] Gains(int coefficients)
    {
        var jacobian = new double[Corners4, coefficients];
        for (var pad = 0; pad < Corners4; pad++)
            for (var own = 0; own < Corners4 - 1; own++)
                jacobian[pad, Corners4 + own] = Sign(pad, own);
        return jacobian;
    }

    static InterchangeResult Described(LinearFit fit, List<string> pads, Corners means)
    {
        var jacobian = Gains(fit.Coefficients.Count);
        var gains = Matrices.Times(jacobian, [.. fit.Coefficients]);
        var covariance = Matrices.Propagate(jacobian, fit.Covariance);

        double[] warp = [0, .. fit.Coefficients.Skip(2 * Corners4 - 1)];
        var mean = warp.Average();
        return new InterchangeResult
        {
            Gains = [.. pads.Select((pad, i) => new PadGain(pad, gains[i], Math.Sqrt(covariance[i, i])))],
            LoadsKg = Corners.From(c => means[c] + fit.Coefficients[(int)c] + mean * Warp((int)c)),
            WarpKg = [.. warp.Select(w => w - mean)],
            ResidualSdKg = fit.ResidualSd,
            DegreesOfFreedom = fit.DegreesOfFreedom,
        };
    }
}
