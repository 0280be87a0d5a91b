namespace ScaleLink.Daemon.Clocks;

/// <summary>How far the machine's wall clock can be believed.</summary>
internal enum ClockTrust
{
    /// <summary>The system does not say.</summary>
    Unknown,
    /// <summary>It is kept in step with a time server or receiver.</summary>
    Synchronised,
    /// <summary>It runs by itself.</summary>
    FreeRunning,
    /// <summary>It stands before a time that is certainly over: no battery has kept it.</summary>
    Unset,
}
