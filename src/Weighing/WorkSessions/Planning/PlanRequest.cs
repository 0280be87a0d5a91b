using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.WorkSessions.Learning;

namespace ScaleLink.Weighing.WorkSessions.Planning;

/// <summary>The question: what to turn next.</summary>
/// <param name="Known">What is known about the car by now.</param>
/// <param name="RideHeightsMm">Measured as the car stands. Null: not measured; heights are then kept as they are and height limits cannot be watched.</param>
/// <param name="Refine">True to plan even when everything is within its tolerance already.</param>
sealed record PlanRequest(StepLearner Known, Corners? RideHeightsMm = null, bool Refine = false)
{
    /// <summary>Where the car should stand; the car's own targets unless set.</summary>
    public CarTargets Targets { get; init; } = Known.Effects.Statics.Car.Targets;
}
