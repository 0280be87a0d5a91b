namespace ScaleLink.Weighing.WorkSessions.Planning;

/// <summary>Another way, when the plan does not reach the targets.</summary>
/// <param name="Kind">What would be given up or freed.</param>
/// <param name="Corner">Where, if at one corner.</param>
/// <param name="Turns">Turns it would take.</param>
/// <param name="After">Misses expected after them.</param>
/// <param name="Words">For the crew.</param>
sealed record PlanAlternative(AlternativeKind Kind, Corner? Corner, Corners Turns, PlanMisses After, Sentence Words);

/// <summary>What an alternative gives up or frees.</summary>
enum AlternativeKind
{
    /// <summary>Ride heights give way to cross weight.</summary>
    GiveUpRideHeight,
    /// <summary>More thread at one corner: another spring seat, packer or spring.</summary>
    MoreThread,
    /// <summary>A perch that is fixed now is made to turn.</summary>
    FreePerch,
    /// <summary>Another ride height limit at one corner.</summary>
    OtherHeightLimit,
}
