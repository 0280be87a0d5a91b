// Each code says by its own text what it means.
#pragma warning disable CS1591

namespace ScaleLink.Measure.Diagnostics;

/// <summary>What a plan of perch turns meets.</summary>
public static class PlanCodes
{
    /// <summary>These codes together.</summary>
    public static CodeArea Area { get; } = new("Plans", "What a plan of perch turns meets.");

    public static readonly Code OutOfReach = Area.Declare(540, "The target cannot be reached within the limits", "Look at the alternatives of the plan, or widen a limit.");
    public static readonly Code NothingToTurn = Area.Declare(541, "No perch can be turned", "State in the car file which do; otherwise packers or other springs must do it.");
    public static readonly Code RideHeightOutside = Area.Declare(542, "A ride height already lies outside its limits", "Correct the height first, or its limits.");
    public static readonly Code InputUnusable = Area.Declare(543, "The question cannot be planned: a number in it is not usable", "Correct the named number.");
    public static readonly Code LimitsNotWatched = Area.Declare(544, "There are ride height limits, but ride heights were not measured: they cannot be watched", "Measure all four ride heights.");
    public static readonly Code PlannedOnGuesses = Area.Declare(545, "The plan rests on values that nobody knows", "Measure them and state them in the car file.");
    public static readonly Code HeightsNotFlat = Area.Declare(618, "Four ride heights do not lie in one plane: one is misread, or the body or the floor is twisted", "Measure them again; what comes back is twist.");
}
