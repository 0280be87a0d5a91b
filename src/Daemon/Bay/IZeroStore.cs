namespace ScaleLink.Daemon.Bay;

/// <summary>Zeros by pad, kept across restarts.</summary>
internal interface IZeroStore
{
    /// <summary>The zero last taken of that pad.</summary>
    ZeroPoint? Latest(string serialNumber);

    /// <summary>Every zero of that pad, oldest first.</summary>
    IReadOnlyList<ZeroPoint> History(string serialNumber);

    /// <summary>What tracking had taken off since that zero when it was last written down, kg.</summary>
    double TrackedKg(ZeroPoint zero);

    /// <summary>Writes down what tracking has taken off since that zero.</summary>
    void AppendTrack(ZeroPoint zero, double sumKg, DateTimeOffset at);

    /// <summary>Writes down how an empty pad read when the car had been lifted off.</summary>
    void AppendCheck(ZeroPoint zero, double kg, DateTimeOffset at);
}
