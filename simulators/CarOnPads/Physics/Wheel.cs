namespace CarOnPads.Physics;

/// <summary>A wheel and the pad under it, seen from the driver's seat. The order is the order of every four.</summary>
enum Wheel
{
    /// <summary>Left front.</summary>
    LF,
    /// <summary>Right front.</summary>
    RF,
    /// <summary>Left rear.</summary>
    LR,
    /// <summary>Right rear.</summary>
    RR,
}
