namespace ScaleLink.Weighing.WorkSessions.Learning;

/// <summary>What an unrecorded change looks like.</summary>
enum UnrecordedKind
{
    /// <summary>Load went from one diagonal to the other, as when a perch is turned. Which perch, four loads cannot tell.</summary>
    LooksLikePerch,
    /// <summary>Mass came or went.</summary>
    MassChanged,
    /// <summary>Same total, other axle: ballast moved, or the patch did.</summary>
    MassMovedOrPatch,
}
