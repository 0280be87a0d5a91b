namespace Daemon.Tests.Workflows.Calibration.Coverage;

/// <summary>What many bays say of one figure.</summary>
/// <param name="Name">Of the figure.</param>
/// <param name="Held">Bays in which the stated 95 % held the truth at the last settle.</param>
/// <param name="Bays">Of so many.</param>
/// <param name="MedianHalfWidth">Of all settles.</param>
/// <param name="NeededHalfWidth">Size of error that 95 % of all settles keep to.</param>
/// <param name="MeanError">Of all settles.</param>
internal sealed record CoverageRow(string Name, int Held, int Bays, double MedianHalfWidth, double NeededHalfWidth, double MeanError)
{
    public (double Low, double High) Interval => ClopperPearson.Of(Held, Bays);

    /// <summary>How much wider than the truth requires.</summary>
    public double Wideness => MedianHalfWidth / NeededHalfWidth;

    public override string ToString() =>
        $"{Name,-24} {Held,4} of {Bays,4} = {100.0 * Held / Bays,5:0.0} % ({100 * Interval.Low:0.0} to {100 * Interval.High:0.0})  U {MedianHalfWidth:0.000}  needed {NeededHalfWidth:0.000}  ratio {Wideness:0.00}  mean error {MeanError:+0.000;-0.000}";
}

/// <summary>Many bays. A bay counts once: all its settles share the errors of its calibrations.</summary>
internal static class BayCoverage
{
    public static IReadOnlyList<CoverageRow> Of(CoveragePlan plan, int seed, int bays, int settles)
    {
        // Generators whose seeds lie beside each other begin alike.
        var seeds = new Random(seed);
        int[] each = [.. Enumerable.Range(0, bays).Select(_ => seeds.Next())];
        var trials = each.AsParallel().AsOrdered().Select(own => BayTrial.Run(plan, own, settles)).OfType<IReadOnlyList<IReadOnlyList<StatedFigure>>>().ToList();
        // One procedure in some hundreds meets a reading that looks like a slip of the hand; more would hide something.
        Assert.True(trials.Count >= 0.97 * bays - 1, $"{bays - trials.Count} of {bays} bays were refused their calibration");
        return [.. trials[0][^1].Select(figure => Row(figure.Name, trials))];
    }

    private static CoverageRow Row(string name, List<IReadOnlyList<IReadOnlyList<StatedFigure>>> trials)
    {
        var all = trials.SelectMany(settles => settles).SelectMany(figures => figures).Where(f => f.Name == name).ToList();
        return new(
            name, trials.Count(settles => settles[^1].Single(f => f.Name == name).Holds), trials.Count,
            At(all.Select(f => f.HalfWidth), 0.5), At(all.Select(f => Math.Abs(f.Error)), 0.95), all.Average(f => f.Error));
    }

    private static double At(IEnumerable<double> values, double part)
    {
        double[] sorted = [.. values.Order()];
        return sorted[(int)Math.Min(sorted.Length - 1, Math.Ceiling(part * sorted.Length) - 1)];
    }
}
