using ScaleLink.Weighing.Statics;

namespace ScaleLink.Weighing.Balance;

/// <summary>The lightest state of the car against the least mass that its class allows.</summary>
/// <param name="MinimumKg">Of the class, kg.</param>
/// <param name="Lightest">Name of the lightest state.</param>
/// <param name="LightestKg">Its total.</param>
/// <param name="MarginKg">Total minus minimum, kg; below zero is too light.</param>
/// <param name="GuardKg">What should lie above the minimum: the asked margin, plus the half width of the interval that holds the true total.</param>
/// <param name="MissingKg">Ballast to add so that the lightest state keeps the guard; zero when it does.</param>
/// <param name="SpareKg">Ballast that could go; zero when none can.</param>
sealed record ClassMinimum(double MinimumKg, string Lightest, Value LightestKg, double MarginKg, double GuardKg, double MissingKg, double SpareKg)
{
    const double UsualCoverage = 0.95;

    /// <summary>Judges a car over all the states it races in. The scales of the scrutineer decide, not these.</summary>
    /// <param name="statics">The car.</param>
    /// <param name="weighed">As weighed.</param>
    /// <param name="minimumKg">Of the class.</param>
    /// <param name="marginKg">What the crew wants in hand, for the scrutineer's scales and for what burns or falls off.</param>
    /// <param name="cases">States besides the one weighed: start and finish fuel, each driver.</param>
    /// <param name="coverage">Probability that the true total is covered by the guard.</param>
    public static ClassMinimum Of(CarStatics statics, LoadSummary weighed, double minimumKg, double marginKg, IReadOnlyList<LoadCase> cases, double coverage = UsualCoverage) =>
        Judge([.. cases.Select(c => (c.Name, c.Loads(statics, weighed).TotalKg)), ("as weighed", weighed.TotalKg)], minimumKg, marginKg, coverage);

    /// <summary>Judges a car by the rule in its file, over the states that the rule counts; null when there is none.</summary>
    /// <param name="statics">The car.</param>
    /// <param name="weighed">As weighed.</param>
    public static ClassMinimum? Of(CarStatics statics, LoadSummary weighed) => statics.Car.Class is { } rule
        ? Judge([.. RaceCases.Counted(statics.Car, rule).Select(c => (c.Name, c.Loads(statics, weighed).TotalKg))], rule.MinimumKg, rule.MarginKg, UsualCoverage)
        : null;

    static ClassMinimum Judge(IReadOnlyList<(string Name, Value TotalKg)> states, double minimumKg, double marginKg, double coverage)
    {
        var (name, total) = states.MinBy(s => s.TotalKg.Estimate);
        var guard = marginKg + total.HalfWidth(coverage);
        var over = total.Estimate - minimumKg;
        return new(minimumKg, name, total, over, guard, Math.Max(0, guard - over), Math.Max(0, over - guard));
    }
}
