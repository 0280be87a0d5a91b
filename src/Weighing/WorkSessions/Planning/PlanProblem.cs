using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Statics;

namespace ScaleLink.Weighing.WorkSessions.Planning;

/// <summary>The question in numbers: misses now, what a turn does to each, and the limits.</summary>
sealed record PlanProblem
{
    static readonly Corners Mean = Corners.Same(0.25);
    static readonly Corners Rake = new(-0.5, -0.5, 0.5, 0.5);
    static readonly Corners Side = new(0.5, -0.5, 0.5, -0.5);

    public required CarTargets Targets { get; init; }
    public required PlanMisses Now { get; init; }
    public required PlanLimits Limits { get; init; }
    public required double SmallestTurn { get; init; }

    /// <summary>Row by row: cross weight (percent), mean height, rake, left-right height difference (mm), for one turn of each perch.</summary>
    public required CornerMatrix PerTurn { get; init; }

    /// <summary>Change of ride height where it is measured and limited (row, mm) for one turn of each perch.</summary>
    public required CornerMatrix HeightsPerTurn { get; init; }

    public static PlanProblem Of(PlanRequest request)
    {
        var effects = request.Known.Effects;
        var (measured, car) = (request.RideHeightsMm, request.Known.CarNow);
        var (targets, heights) = (TargetsAtWheels.Of(request.Targets, car, measured), measured is { } mm ? BodyPlane.AtWheels(car, mm) : (Corners?)null);
        var crossPerLoad = 100 / effects.Statics.TotalKg * Shares.CrossWeight;
        return new()
        {
            Targets = targets,
            SmallestTurn = car.SmallestTurn,
            Limits = PlanLimits.Of(car, measured),
            HeightsPerTurn = BodyPlane.AtMarks(car, effects.HeightsPerTurn),
            PerTurn = new(
                effects.LoadsPerTurn.Transposed * crossPerLoad, effects.HeightsPerTurn.Transposed * Mean,
                effects.HeightsPerTurn.Transposed * Rake, effects.HeightsPerTurn.Transposed * Side),
            Now = new(
                request.Known.CrossWeightPercent.Estimate - targets.CrossWeightPercent,
                heights is { } h && targets.RideHeightsMm is { } wanted ? Mean.Dot(h - wanted) : 0,
                MissOf(Rake, targets.RakeMm, targets, heights),
                MissOf(Side, targets.LeftRightDifferenceMm, targets, heights)),
        };
    }

    public PlanMisses After(in Corners turns)
    {
        var change = PerTurn * turns;
        return new(Now.CrossWeightPercent + change.LF, Now.MeanRideHeightMm + change.RF, Now.RakeMm + change.LR, Now.LeftRightDifferenceMm + change.RR);
    }

    public double Value(in Corners turns) => PlanObjective.Value(After(turns), turns, Targets);

    /// <summary>The same with ride heights hardly counting.</summary>
    public PlanProblem CrossWeightFirst() => this with { Targets = Targets with { RideHeightToleranceMm = 20 * Targets.RideHeightToleranceMm, RakeToleranceMm = 20 * Targets.RakeToleranceMm } };

    static double MissOf(Corners pattern, double? wanted, CarTargets targets, Corners? heights) => heights switch
    {
        { } h when targets.RideHeightsMm is { } all => pattern.Dot(h - all),
        { } h when wanted is { } one => pattern.Dot(h) - one,
        _ => 0,
    };
}
