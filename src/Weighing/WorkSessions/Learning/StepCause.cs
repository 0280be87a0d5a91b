namespace ScaleLink.Weighing.WorkSessions.Learning;

/// <summary>Why a step may not have done what it should have done.</summary>
enum StepCause
{
    /// <summary>An anti-roll bar is connected although it was said to be off.</summary>
    BarConnected,
    /// <summary>An anti-roll bar is off although it was said to be connected.</summary>
    BarOff,
    /// <summary>Everything was turned the other way.</summary>
    WrongDirection,
    /// <summary>A turn went into another corner.</summary>
    WrongCorner,
    /// <summary>One of the turns was not made.</summary>
    TurnMissed,
    /// <summary>The reading was taken too early, or without the settle.</summary>
    NotSettled,
    /// <summary>A damper, bush or ball joint holds part of the change back.</summary>
    Binding,
    /// <summary>A tyre lost or gained pressure.</summary>
    TyrePressure,
    /// <summary>Somebody or something got into or out of the car.</summary>
    MassChanged,
    /// <summary>A pad was moved, or the car stands on other places.</summary>
    PatchMoved,
}
