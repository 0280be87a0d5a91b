using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.WorkSessions.Planning;

namespace ScaleLink.Weighing.Questions;

/// <summary>What somebody wonders about one car on its pads. Parts that are null were not asked.</summary>
sealed record WhatIfQuestions
{
    /// <summary>The car, with its bars as they are meant to be.</summary>
    public required CarModel Car { get; init; }

    /// <summary>Loads as they are.</summary>
    public required LoadSummary Loads { get; init; }

    /// <summary>Ride heights as they are, mm.</summary>
    public Corners? RideHeightsMm { get; init; }

    /// <summary>Turns, raised pads, masses.</summary>
    public WhatIf? Change { get; init; }

    /// <summary>Repeatability of cross weight between settles, percent, when a plan is asked for.</summary>
    public double? PlanWithRepeatabilityPercent { get; init; }

    /// <summary>A front weight that ballast should reach, percent.</summary>
    public double? FrontWeightPercent { get; init; }

    /// <summary>A left-side weight that ballast should reach, percent.</summary>
    public double? LeftSideWeightPercent { get; init; }

    /// <summary>Least mass of the class and the margin wanted above it, kg, and the states the car races in.</summary>
    public (double MinimumKg, double MarginKg, IReadOnlyList<LoadCase> Cases)? Class { get; init; }

    /// <summary>Axle lifts for the height of the centre of gravity.</summary>
    public (AxleLiftSetup Setup, IReadOnlyList<AxleLift> Lifts)? Lifts { get; init; }
}
