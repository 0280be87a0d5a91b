namespace ScaleLink.Daemon.Bay;

/// <summary>How a pad stands with the daemon.</summary>
internal enum PadState
{
    /// <summary>Its port cannot be opened, or has hung up.</summary>
    Absent,
    /// <summary>The port is open; no valid sample yet.</summary>
    Waiting,
    /// <summary>Samples arrive.</summary>
    Live,
    /// <summary>The port is open, but samples have stopped.</summary>
    Silent,
    /// <summary>It speaks, but is not the pad that belongs here.</summary>
    Refused,
}
