namespace ScaleLink.Weighing.Cars;

/// <summary>The codes of car, patch and plan. A code never changes its meaning and is never used again.</summary>
public static class CarCodes
{
    /// <summary>Wheelbase or track is not a usable length.</summary>
    public const string Geometry = "SL-501";
    /// <summary>A spring, tyre or bar rate is not usable.</summary>
    public const string Rate = "SL-502";
    /// <summary>A motion ratio is not usable.</summary>
    public const string MotionRatio = "SL-503";
    /// <summary>A perch pitch or the smallest useful turn is not usable.</summary>
    public const string PerchPitch = "SL-504";
    /// <summary>A thread range is not usable.</summary>
    public const string ThreadRange = "SL-505";
    /// <summary>A standard uncertainty is missing or negative.</summary>
    public const string Uncertainty = "SL-506";
    /// <summary>A height (centre of gravity, roll axis, ride height limit) is not usable.</summary>
    public const string Height = "SL-507";
    /// <summary>A target or its tolerance is not usable.</summary>
    public const string Target = "SL-508";
    /// <summary>A ballast station is not usable.</summary>
    public const string Ballast = "SL-509";
    /// <summary>The car has no name.</summary>
    public const string Name = "SL-510";
    /// <summary>The four loads are not those of a car on its wheels.</summary>
    public const string Loads = "SL-511";

    /// <summary>A document is not JSON.</summary>
    public const string NotJson = "SL-512";
    /// <summary>A document has a field that means nothing there.</summary>
    public const string UnknownField = "SL-513";
    /// <summary>A document lacks a field.</summary>
    public const string MissingField = "SL-514";
    /// <summary>A field of a document is of the wrong kind.</summary>
    public const string WrongKind = "SL-515";

    /// <summary>Too few height readings to know all four pads.</summary>
    public const string SurveyIncomplete = "SL-520";
    /// <summary>Height readings contradict each other.</summary>
    public const string SurveyDisagrees = "SL-521";
    /// <summary>The patch slopes more than the correction is good for.</summary>
    public const string SlopeBeyondLimit = "SL-522";
    /// <summary>The patch is warped more than the correction is good for.</summary>
    public const string WarpBeyondLimit = "SL-523";
    /// <summary>A pad is tilted more than the correction is good for.</summary>
    public const string TiltBeyondLimit = "SL-524";
    /// <summary>The warp correction needs rates that nobody stated.</summary>
    public const string RatesUnknown = "SL-525";
    /// <summary>The slope correction needs the height of the centre of gravity.</summary>
    public const string CgHeightUnknown = "SL-526";
    /// <summary>The two halves of a reversal test do not belong together.</summary>
    public const string ReversalDisagrees = "SL-527";
    /// <summary>The shims at hand cannot level the pads.</summary>
    public const string ShimsDoNotReach = "SL-528";
    /// <summary>A height or shim is not a usable length.</summary>
    public const string PatchInput = "SL-529";

    /// <summary>An axle lift is too small, missing, or not possible.</summary>
    public const string LiftUnusable = "SL-530";
    /// <summary>The axle lifts contradict each other.</summary>
    public const string LiftsDisagree = "SL-531";

    /// <summary>The target cannot be reached within the limits.</summary>
    public const string OutOfReach = "SL-540";
    /// <summary>No perch can be turned.</summary>
    public const string NothingToTurn = "SL-541";
    /// <summary>A ride height already lies outside its limits.</summary>
    public const string RideHeightOutside = "SL-542";
    /// <summary>The question cannot be planned: a number in it is not usable.</summary>
    public const string PlanInput = "SL-543";
    /// <summary>There are ride height limits, but ride heights were not measured: they cannot be watched.</summary>
    public const string LimitsNotWatched = "SL-544";
    /// <summary>The plan leans on values that nobody knows.</summary>
    public const string PlannedOnGuesses = "SL-545";

    /// <summary>A pad does not say how it leans.</summary>
    public const string LeanUnknown = "SL-546";
    /// <summary>A pad whose lean is to be read is loaded.</summary>
    public const string LeanUnderLoad = "SL-547";
    /// <summary>The lean of a pad is not at rest.</summary>
    public const string LeanNotAtRest = "SL-548";
    /// <summary>Whether a pad was turned cannot be known: it reads the same, as it does on level ground too.</summary>
    public const string TurnNotSeen = "SL-549";

    /// <summary>A step did not do what it should have done.</summary>
    public const string StepDisagrees = "SL-550";
    /// <summary>The settled loads changed although no step was recorded.</summary>
    public const string UnrecordedChange = "SL-551";
    /// <summary>A step asks for a perch that does not turn or a number that is not usable.</summary>
    public const string StepInput = "SL-552";
    /// <summary>A pad was not turned between two readings of its lean.</summary>
    public const string NotTurned = "SL-553";
    /// <summary>The zero of a pad's inclinometer is larger than a mounting error.</summary>
    public const string LeanZeroTooLarge = "SL-554";
    /// <summary>There is no such step of a reversal test now.</summary>
    public const string LeanOutOfStep = "SL-555";
    /// <summary>What is stated about the fuel is not usable.</summary>
    public const string Fuel = "SL-556";
    /// <summary>A driver is not usable.</summary>
    public const string Driver = "SL-557";
    /// <summary>The class minimum is not usable, or counts what the car file does not state.</summary>
    public const string ClassMinimum = "SL-558";
}
