using ScaleLink.Weighing.Calibration.Fitting;
using ScaleLink.Weighing.Calibration.Masses;
using ScaleLink.Weighing.Statistics;

namespace ScaleLink.Weighing.Calibration.Procedure;

/// <summary>
/// Looks for the one mistake that would explain points off the curve: a reading, a mass, two masses exchanged. Each
/// suspicion adds one column to the fit; the one that removes most of the repeatability is named, with its likely cause.
/// </summary>
static class Diagnosis
{
    const double KgPerLb = 0.45359237;

    // All suspicions together raise a false alarm in fewer than one calibration procedure in a thousand.
    const double FalseAlarm = 0.001;

    // Smaller departures are for the uncertainty to carry, not for a search of mistakes: share of the highest load.
    // With few loads a bow of the pad and a wrong mass look alike, and only gross mistakes are named.
    const double LeastShare = 0.0005, LeastShareOfFewLoads = 0.01;

    // Masses within their tolerances make departures too; so many of their standard uncertainties are let pass.
    const double ToleratedFactor = 4;

    /// <summary>The mistake found, or null.</summary>
    public static Diagnostic? Of(MassSet masses, IReadOnlyList<ProcedurePoint> points)
    {
        ArgumentNullException.ThrowIfNull(masses);
        ArgumentNullException.ThrowIfNull(points);
        var design = new ProcedureDesign(masses, points);
        // A curve where the loads carry one, so that a bow of the pad is not taken for a mistake.
        var levels = points.Select(p => p.Load).Distinct().Count();
        var carriesCurve = levels >= 5;
        var matrix = carriesCurve ? design.Quadratic : design.Line;
        if (points.Count - matrix.GetLength(1) < 2 || !HouseholderQr.Of(matrix).FullRank)
            return null;

        var extra = new ExtraColumn(matrix, LeastSquares.Fit(matrix, design.Y), [.. design.SingleErrors]);
        var used = Used(masses, points);
        List<Suspicion> all = [.. Masses(used), .. Swaps(used), .. Readings(points)];
        var least = (carriesCurve ? LeastShare : LeastShareOfFewLoads) * design.Y.Max();
        List<Finding> likely = [.. all.Select(s => extra.Test(s, FalseAlarm / all.Count)).OfType<Finding>()
            .Where(f => Math.Abs(f.Kg) > ToleratedFactor * f.ByMassesKg + least)];
        if (likely.Count == 0)
            return null;

        // What explains nearly as much as the best, and has a known cause, is likelier than a freak.
        var best = likely.Min(f => f.Left);
        return likely.Where(f => f.Left <= 1.5 * best + 1e-9).OrderByDescending(f => f.Explains).ThenBy(f => f.Left).First().Refusal;
    }

    // Masses that always stand on the pad together cannot be told from each other.
    static IEnumerable<Suspicion> Masses(List<(KnownMass Mass, double[] Counts)> used) => used
        .GroupBy(u => string.Join(',', u.Counts))
        .Select(group => new Suspicion(group.First().Counts, (kg, u) => OfMasses([.. group.Select(g => g.Mass)], kg, u)));

    static IEnumerable<Suspicion> Swaps(List<(KnownMass Mass, double[] Counts)> used) =>
        from a in used.Index()
        from b in used.Index()
        where a.Index < b.Index && a.Item.Mass.Kg != b.Item.Mass.Kg && !a.Item.Counts.SequenceEqual(b.Item.Counts)
        select new Suspicion([.. a.Item.Counts.Zip(b.Item.Counts, (x, y) => x - y)],
            (kg, u) => Near(kg, b.Item.Mass.Kg - a.Item.Mass.Kg, u)
                ? (2, CalibrationCodes.MassesExchanged.Because($"{a.Item.Mass.Label} and {b.Item.Mass.Label}"))
                : (-1, null));

    static IEnumerable<Suspicion> Readings(IReadOnlyList<ProcedurePoint> points) => points.Index().Select(point =>
        new Suspicion([.. points.Select((_, i) => i == point.Index ? 1.0 : 0)], (kg, _) => (1, CalibrationCodes.ReadingOff.Because(
            $"repetition {point.Item.Repetition}, {(point.Item.Way == LoadingWay.Up ? "way up" : "way down")}, {point.Item.Load}: {Kg(kg):+0.00} off"))));

    static (int, Diagnostic?) OfMasses(List<KnownMass> together, double kg, double u)
    {
        var listed = together.Sum(m => m.Kg);
        Sentence found = $"{string.Join(" + ", together.Select(m => m.Label))}, listed as {Kg(listed):0.###}, weighs about {Kg(listed + kg):0.##}";
        if (together.Any(mass => Near(kg, mass.Kg * (KgPerLb - 1), u)))
            return (3, CalibrationCodes.WrongUnit.Because($"{found}: is one marked in pounds?"));
        if (together.Any(mass => Near(kg, mass.Kg * (1 / KgPerLb - 1), u)))
            return (3, CalibrationCodes.WrongUnit.Because($"{found}: was one converted from pounds twice?"));
        return (0, CalibrationCodes.MassOff.Because(found));
    }

    static bool Near(double found, double expected, double u) => Math.Abs(found - expected) <= Math.Max(0.02 * Math.Abs(expected), 3 * u);

    // How often each mass that was used stands on the pad, point by point.
    static List<(KnownMass Mass, double[] Counts)> Used(MassSet masses, IReadOnlyList<ProcedurePoint> points) =>
    [
        .. masses.Masses.Select(mass => (mass, points.Select(p => (double)p.Load.Masses.Count(label => label == mass.Label)).ToArray()))
            .Where(used => used.Item2.Any(count => count > 0)),
    ];

    sealed record Suspicion(double[] Column, Func<double, double, (int Explains, Diagnostic? Refusal)> Verdict);

    sealed record Finding(double Kg, double ByMassesKg, double Left, int Explains, Diagnostic Refusal);

    /// <summary>
    /// Adds one column to a fit without fitting anew: what the column has beyond the others meets what they leave over.
    /// </summary>
    sealed class ExtraColumn(double[,] matrix, LinearFit plain, IReadOnlyList<double[]> massErrors)
    {
        // A column that the others explain to this share cannot be told from them.
        const double Indistinct = 1e-9;

        readonly double[,] _pseudoInverse = HouseholderQr.Of(matrix).PseudoInverse();
        readonly double[] _left = [.. plain.Residuals];

        public Finding? Test(Suspicion suspicion, double chance)
        {
            // The list says y where y + kg * column stood on the pad.
            double[] column = [.. suspicion.Column.Select(c => -c)];
            var explained = Matrices.Times(matrix, Matrices.Times(_pseudoInverse, column));
            double[] own = [.. column.Zip(explained, (c, e) => c - e)];
            var square = Dot(own, own);
            if (square <= Indistinct * Dot(column, column))
                return null;

            var kg = Dot(own, _left) / square;
            var drop = kg * kg * square;
            var left = Math.Max(0, plain.ResidualSumOfSquares - drop);
            var degrees = plain.DegreesOfFreedom - 1;
            var repeatability = left / degrees;
            if (repeatability > 0 && new NestedTest(drop / repeatability, 1, degrees).Chance > chance)
                return null;
            var (explains, refusal) = suspicion.Verdict(kg, Math.Sqrt(repeatability / square));
            var byMasses = Math.Sqrt(massErrors.Sum(error => Math.Pow(Dot(own, error) / square, 2)));
            return refusal is null ? null : new Finding(kg, byMasses, left, explains, refusal);
        }

        static double Dot(double[] a, double[] b) => a.Zip(b, (x, y) => x * y).Sum();
    }
}
