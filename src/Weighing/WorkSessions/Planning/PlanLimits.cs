using ScaleLink.Weighing.Cars;

namespace ScaleLink.Weighing.WorkSessions.Planning;

/// <summary>What a plan must not exceed.</summary>
/// <param name="LowestTurns">Furthest down each perch goes from here, turns (zero or less).</param>
/// <param name="HighestTurns">Furthest up, turns.</param>
/// <param name="LowestRise">Change of ride height allowed at each corner, mm; minus infinity where there is no limit.</param>
/// <param name="HighestRise">The same upwards.</param>
sealed record PlanLimits(Corners LowestTurns, Corners HighestTurns, Corners LowestRise, Corners HighestRise)
{
    /// <summary>The limits of a car as it stands.</summary>
    /// <param name="car">Threads as they are when the plan begins.</param>
    /// <param name="heights">Ride heights as they are; null when not measured.</param>
    public static PlanLimits Of(CarModel car, Corners? heights)
    {
        var canTurn = car.Suspension.Map(s => s.Perch.CanTurn ? 1 : 0);
        return new(
            Corners.From(c => -canTurn[c] * car.Suspension[c].Perch.DownTurnsLeft),
            Corners.From(c => canTurn[c] * car.Suspension[c].Perch.UpTurnsLeft),
            // A corner that is outside already may stay, but not go further.
            Corners.From(c => Math.Min(0, (car.Suspension[c].LowestRideHeightMm - heights?[c]) ?? double.NegativeInfinity)),
            Corners.From(c => Math.Max(0, (car.Suspension[c].HighestRideHeightMm - heights?[c]) ?? double.PositiveInfinity)));
    }

    /// <summary>Without the thread limits of one corner.</summary>
    public PlanLimits FreeThread(Corner corner) => this with
    {
        LowestTurns = LowestTurns.With(corner, -Unlimited),
        HighestTurns = HighestTurns.With(corner, Unlimited),
    };

    /// <summary>Without the ride height limits of one corner.</summary>
    public PlanLimits FreeHeight(Corner corner) => this with
    {
        LowestRise = LowestRise.With(corner, double.NegativeInfinity),
        HighestRise = HighestRise.With(corner, double.PositiveInfinity),
    };

    // Further than any thread goes.
    const double Unlimited = 20;
}
