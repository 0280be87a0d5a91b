namespace ScaleLink.Weighing.Balance;

/// <summary>What a crew may want from the one thing that perches can change about the loads.</summary>
enum BalanceGoal
{
    /// <summary>Cross weight at its target.</summary>
    CrossWeight,
    /// <summary>LF equal to RF: brakes pull straight at the front.</summary>
    EqualFrontLoads,
    /// <summary>LR equal to RR.</summary>
    EqualRearLoads,
    /// <summary>The same left-side weight on both axles.</summary>
    EqualLeftSideWeights,
}
