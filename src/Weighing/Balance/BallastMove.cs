using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Statics;

namespace ScaleLink.Weighing.Balance;

/// <summary>
/// A share that ballast can be asked to bring to a target. Cross weight is not among them: mass put anywhere on a car with
/// equal rates adds to both diagonals alike, and with unequal ones nearly so. Perches move cross weight, mass moves these.
/// </summary>
enum BallastGoal
{
    /// <summary>(LF + RF) / total.</summary>
    FrontWeight,
    /// <summary>(LF + LR) / total.</summary>
    LeftSideWeight,
}

/// <summary>One way to reach a share with ballast instead of perches.</summary>
/// <param name="From">Where mass is taken out; null: nothing is.</param>
/// <param name="To">Where it goes in; null: nothing does.</param>
/// <param name="MassKg">How much, kg.</param>
/// <param name="Reaches">False when station capacity or fitted mass ends first.</param>
/// <param name="LoadsKg">Loads afterwards, kg, perches untouched.</param>
/// <param name="TotalChangeKg">Change of the total, kg.</param>
/// <param name="SharePercent">The share that was asked about, afterwards, percent.</param>
sealed record BallastMove(string? From, string? To, double MassKg, bool Reaches, Corners LoadsKg, double TotalChangeKg, double SharePercent)
{
    /// <summary>
    /// Every single addition, removal and move between two of the car's stations that brings the share nearer, those that
    /// reach it first, then by least mass.
    /// </summary>
    /// <param name="statics">The car.</param>
    /// <param name="loads">Loads as they are, kg.</param>
    /// <param name="goal">Which share.</param>
    /// <param name="targetPercent">Where it should be, percent.</param>
    /// <exception cref="DiagnosticException">The target is no share.</exception>
    public static IReadOnlyList<BallastMove> Ways(CarStatics statics, in Corners loads, BallastGoal goal, double targetPercent)
    {
        if (targetPercent is not (> 0 and < 100))
            throw new DiagnosticException(new Diagnostic(CarCodes.Target, $"The share to be reached is {targetPercent} %.", "Give a share of the total in percent, above 0 and below 100."));
        var (pattern, start) = (goal == BallastGoal.FrontWeight ? Shares.Front : Shares.Left, loads);
        BallastStation?[] stations = [null, .. statics.Car.BallastStations];
        return [.. stations.SelectMany(_ => stations, (from, to) => (from, to))
            .Where(pair => pair.from != pair.to)
            .Select(pair => Way(statics, start, pattern, targetPercent, pair.from, pair.to))
            .OfType<BallastMove>().OrderBy(w => !w.Reaches).ThenBy(w => w.MassKg)];
    }

    static BallastMove? Way(CarStatics statics, Corners loads, Corners pattern, double target, BallastStation? from, BallastStation? to)
    {
        var perKg = (to is null ? default : statics.FromMass(1, to.Place)) - (from is null ? default : statics.FromMass(1, from.Place));
        // pattern . (loads + m perKg) = target / 100 (total + m sum(perKg)), linear in m.
        var zero = pattern - Corners.Same(target / 100);
        var needed = -zero.Dot(loads) / zero.Dot(perKg);
        var most = Math.Min(from?.FittedKg ?? double.PositiveInfinity, to is null ? double.PositiveInfinity : to.CapacityKg - to.FittedKg);
        if (!(needed > 0 && most > 0 && double.IsFinite(needed)))
            return null;
        var mass = Math.Min(needed, most);
        var after = loads + mass * perKg;
        return new(from?.Name, to?.Name, mass, needed <= most + 1e-9, after, mass * perKg.Sum, Shares.Percent(pattern, after));
    }
}
