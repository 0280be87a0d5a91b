using ScaleLink.Measure;
using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Statics;
using ScaleLink.Weighing.WorkSessions.Learning;
using ScaleLink.Weighing.WorkSessions.Planning;
using Weighing.Tests.Cars;

namespace Weighing.Tests.WorkSessions.Planning;

/// <summary>Questions for the planner, and the objective computed from public numbers only.</summary>
static class PlanCases
{
    static readonly CornerMatrix ReadingNoise = CornerMatrix.Diagonal(Corners.Same(0.01));

    public static PlanRequest Ask(CarModel car, Corners loads, Corners? heights = null) =>
        new(StepLearner.Start(new CarStatics(car, loads.Sum), new LoadSummary(loads, ReadingNoise)), heights);

    /// <summary>The demo car, drawn anew: rates, loads, thread, limits, fixed perches, targets.</summary>
    public static PlanRequest Draw(Random random, double smallestTurn, double thread)
    {
        double U(double low, double high) => low + (high - low) * random.NextDouble();
        var car = Heron.Car with
        {
            SmallestTurn = smallestTurn,
            Targets = new() { CrossWeightPercent = U(48.5, 51.5), CrossWeightTolerancePercent = U(0.1, 0.4), RideHeightToleranceMm = U(0.5, 2) },
        };
        foreach (var corner in Corners.All)
        {
            var limited = random.Next(3) == 0;
            car = car.Change(corner, s => s with
            {
                SpringRateNPerMm = Stated.Within(U(40, 100), 0.05),
                LowestRideHeightMm = limited ? 100 - U(0, 3) : null,
                HighestRideHeightMm = limited ? 100 + U(0, 3) : null,
                Perch = s.Perch with { CanTurn = random.Next(5) != 0, UpTurnsLeft = U(0, thread), DownTurnsLeft = U(0, thread) },
            });
        }
        if (Corners.All.ToArray().All(c => !car.Suspension[c].Perch.CanTurn))
            car = car.Change(Corner.LF, s => s with { Perch = s.Perch with { CanTurn = true } });
        Corners? heights = random.Next(4) == 0 ? null : Corners.Same(100);
        if (heights is not null && random.Next(2) == 0)
            car = car with { Targets = car.Targets with { RakeMm = U(-2, 2), LeftRightDifferenceMm = U(-1, 1) } };
        return Ask(car, Corners.From(c => Heron.Loads[c] + U(-12, 12)), heights);
    }

    /// <summary>Misses after turns, from sensitivities and definitions.</summary>
    public static PlanMisses Misses(PlanRequest request, Corners turns)
    {
        var (known, targets) = (request.Known, request.Targets);
        var loads = known.Effects.LoadsPerTurn * turns;
        var rise = known.Effects.HeightsPerTurn * turns;
        var h = rise + (request.RideHeightsMm ?? default);
        return new(
            known.CrossWeightPercent.Estimate + 100 * (loads.RF + loads.LR) / known.Effects.Statics.TotalKg - targets.CrossWeightPercent,
            rise.Sum / 4,
            (request.RideHeightsMm is not null && targets.RakeMm is { } rake ? (h.LR + h.RR - h.LF - h.RF) / 2 - rake : (rise.LR + rise.RR - rise.LF - rise.RF) / 2),
            (request.RideHeightsMm is not null && targets.LeftRightDifferenceMm is { } side ? (h.LF + h.LR - h.RF - h.RR) / 2 - side : (rise.LF + rise.LR - rise.RF - rise.RR) / 2));
    }

    /// <summary>True when the turns keep to perches, threads and ride height limits.</summary>
    public static bool Allowed(PlanRequest request, Corners turns)
    {
        var rise = request.Known.Effects.HeightsPerTurn * turns;
        foreach (var corner in Corners.All)
        {
            var setup = request.Known.Effects.Statics.Car.Suspension[corner];
            if (turns[corner] > setup.Perch.UpTurnsLeft + 1e-9 || -turns[corner] > setup.Perch.DownTurnsLeft + 1e-9 || (turns[corner] != 0 && !setup.Perch.CanTurn))
                return false;
            if (request.RideHeightsMm is { } h && (h[corner] + rise[corner] > setup.HighestRideHeightMm + 1e-6 || h[corner] + rise[corner] < setup.LowestRideHeightMm - 1e-6))
                return false;
        }
        return true;
    }
}
