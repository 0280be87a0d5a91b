using ScaleLink.Weighing.Statistics;

namespace ScaleLink.Weighing.Calibration;

/// <summary>
/// Looks for the one mistake that would explain points off the curve: a reading, a mass, two masses exchanged. Each
/// suspicion adds one column to the fit; the one that removes most of the scatter is named, with its likely cause.
/// </summary>
public static class Diagnosis
{
    const double KgPerLb = 0.45359237;

    // All suspicions together raise a false alarm in fewer than one proof in a thousand.
    const double FalseAlarm = 0.001;

    // Smaller departures are for the uncertainty to carry, not for a search of mistakes: share of the highest load.
    const double LeastShare = 0.0005;

    /// <summary>The mistake found, or null.</summary>
    public static Refusal? Of(MassSet masses, IReadOnlyList<ProofPoint> points)
    {
        ArgumentNullException.ThrowIfNull(masses);
        ArgumentNullException.ThrowIfNull(points);
        var design = new ProofDesign(masses, points);
        // A curve where the loads carry one, so that a bow of the pad is not taken for a mistake.
        var levels = points.Select(p => p.Load.Key).Distinct().Count();
        var matrix = levels >= 5 ? design.Quadratic : design.Line;
        if (points.Count - matrix.GetLength(1) < 2 || !HouseholderQr.Of(matrix).FullRank)
            return null;

        var plain = LeastSquares.Fit(matrix, design.Y);
        List<Suspicion> all = [.. Masses(masses, points), .. Swaps(masses, points), .. Readings(points)];
        var tested = all.Select(s => Test(s, design, matrix, plain)).OfType<Finding>().ToList();
        var least = LeastShare * design.Y.Max();
        List<Finding> likely = [.. tested.Where(f => f.Chance * all.Count < FalseAlarm && Math.Abs(f.Kg) > f.Suspicion.LeastKg + least)];
        if (likely.Count == 0)
            return null;

        // What explains nearly as much as the best, and has a known cause, is likelier than a freak.
        var best = likely.Min(f => f.Left);
        return likely.Where(f => f.Left <= 1.5 * best + 1e-9).OrderByDescending(f => f.Explains).ThenBy(f => f.Left).First().Refusal;
    }

    static IEnumerable<Suspicion> Masses(MassSet masses, IReadOnlyList<ProofPoint> points) => masses.Masses
        .Where(mass => points.Any(p => p.Load.Masses.Contains(mass.Label)))
        .Select(mass => new Suspicion(i => Count(points[i], mass), 4 * mass.ToleranceKg, (kg, u) => OfMass(mass, kg, u)));

    static IEnumerable<Suspicion> Swaps(MassSet masses, IReadOnlyList<ProofPoint> points) =>
        from a in masses.Masses.Index()
        from b in masses.Masses.Index()
        where a.Index < b.Index && a.Item.Kg != b.Item.Kg
        where points.Any(p => Count(p, a.Item) != Count(p, b.Item))
        select new Suspicion(i => Count(points[i], a.Item) - Count(points[i], b.Item), 4 * (a.Item.ToleranceKg + b.Item.ToleranceKg),
            (kg, u) => Near(kg, b.Item.Kg - a.Item.Kg, u)
                ? (2, CalibrationRefusals.MassesSwapped.Because($"{a.Item.Label} and {b.Item.Label}"))
                : (-1, null));

    static IEnumerable<Suspicion> Readings(IReadOnlyList<ProofPoint> points) => points.Index().Select(point =>
        new Suspicion(i => i == point.Index ? 1 : 0, 0, (kg, _) => (1, CalibrationRefusals.ReadingOff.Because(
            $"run {point.Item.Run}, {(point.Item.Way == LoadingWay.Up ? "way up" : "way down")}, {point.Item.Load}: {kg:+0.00;-0.00} kg off"))));

    static (int, Refusal?) OfMass(KnownMass mass, double kg, double u)
    {
        var found = mass.Kg + kg;
        if (Near(found, mass.Kg * KgPerLb, u))
            return (3, CalibrationRefusals.WrongUnit.Because($"{mass.Label} is listed as {mass.Kg:0.###} kg and weighs about {found:0.##} kg: is it marked in pounds?"));
        if (Near(found, mass.Kg / KgPerLb, u))
            return (3, CalibrationRefusals.WrongUnit.Because($"{mass.Label} is listed as {mass.Kg:0.###} kg and weighs about {found:0.##} kg: was its value converted from pounds twice?"));
        return (0, CalibrationRefusals.MassOff.Because($"{mass.Label} is listed as {mass.Kg:0.###} kg and weighs about {found:0.##} kg"));
    }

    static bool Near(double found, double expected, double u) => Math.Abs(found - expected) <= Math.Max(0.02 * Math.Abs(expected), 3 * u);

    static int Count(ProofPoint point, KnownMass mass) => point.Load.Masses.Count(label => label == mass.Label);

    static Finding? Test(Suspicion suspicion, ProofDesign design, double[,] matrix, LinearFit plain)
    {
        // The list says y where y + kg * column stood on the pad.
        var wider = ProofDesign.With(matrix, i => -suspicion.Column(i));
        if (wider.GetLength(0) <= wider.GetLength(1) || !HouseholderQr.Of(wider).FullRank)
            return null;
        var fit = LeastSquares.Fit(wider, design.Y);
        var column = wider.GetLength(1) - 1;
        var kg = fit.Coefficients[column];
        var (explains, refusal) = suspicion.Verdict(kg, fit.StandardDeviation(column));
        return refusal is null || NestedTest.Of(plain, fit) is not { } test
            ? null
            : new Finding(suspicion, kg, test.Chance, fit.ResidualSumOfSquares, explains, refusal);
    }

    sealed record Suspicion(Func<int, double> Column, double LeastKg, Func<double, double, (int Explains, Refusal? Refusal)> Verdict);

    sealed record Finding(Suspicion Suspicion, double Kg, double Chance, double Left, int Explains, Refusal Refusal);
}
