namespace ScaleLink.Daemon.Bay;

/// <summary>Zeros of inclinometers by pad, kept across restarts.</summary>
internal interface IInclinometerZeroStore
{
    /// <summary>The zero last tested of that pad; nothing when it was never tested, or was cleared.</summary>
    SavedInclinometerZero? InEffect(string serialNumber);
}
