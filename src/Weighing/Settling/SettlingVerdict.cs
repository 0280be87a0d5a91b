namespace ScaleLink.Weighing.Settling;

/// <summary>What can be said of the four loads at this moment.</summary>
enum SettlingVerdict
{
    /// <summary>
    /// The car moves, or too little has been seen since the last disturbance. Nothing is claimed, unless the reading is marked as
    /// a fallback.
    /// </summary>
    Moving,

    /// <summary>The loads are claimed within the stated uncertainty, which is still wider than the tolerance.</summary>
    Settling,

    /// <summary>The loads at rest are known within the tolerance on all four pads, even if the car still rocks a little.</summary>
    Settled,

    /// <summary>The car was settled and something touched it: a person, a step nearby, a slip of its own friction.</summary>
    Disturbed,
}
