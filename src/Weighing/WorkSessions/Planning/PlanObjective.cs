using ScaleLink.Weighing.Cars;

namespace ScaleLink.Weighing.WorkSessions.Planning;

/// <summary>
/// What makes one plan better than another:
/// the sum over cross weight, mean ride height, rake and left-right height difference of (miss / tolerance)²,
/// plus <see cref="PerCorner"/> for each corner that must be touched, plus <see cref="PerTurnSquared"/> times the sum of turns².
/// A body is flat, so those three heights are all four corners.
/// </summary>
static class PlanObjective
{
    /// <summary>Touching a corner costs as much as missing one target by a seventh of its tolerance.</summary>
    public const double PerCorner = 0.02;

    /// <summary>Ten turns of one perch cost as much as missing one target by a third of its tolerance.</summary>
    public const double PerTurnSquared = 0.001;

    /// <summary>The value of a plan; smaller is better.</summary>
    public static double Value(in PlanMisses misses, in Corners turns, CarTargets targets)
    {
        var heights = Square(misses.MeanRideHeightMm) + Square(targets.RakeWeight * misses.RakeMm) + Square(misses.LeftRightDifferenceMm);
        return Square(misses.CrossWeightPercent / targets.CrossWeightTolerancePercent)
            + heights / Square(targets.RideHeightToleranceMm)
            + PerTurnSquared * turns.Dot(turns)
            + PerCorner * turns.Map(t => t == 0 ? 0 : 1).Sum;
    }

    /// <summary>True when every miss is within its tolerance.</summary>
    public static bool WithinTolerance(in PlanMisses misses, CarTargets targets) =>
        Math.Abs(misses.CrossWeightPercent) <= targets.CrossWeightTolerancePercent
        && Math.Max(Math.Abs(misses.MeanRideHeightMm), Math.Max(Math.Abs(targets.RakeWeight * misses.RakeMm), Math.Abs(misses.LeftRightDifferenceMm))) <= targets.RideHeightToleranceMm;

    static double Square(double value) => value * value;
}
