namespace ScaleLink.Daemon.Bay;

/// <summary>What one pad has to say of one block of time.</summary>
/// <param name="LoadKg">Mean load, corrected; absent when it is not known.</param>
/// <param name="ZeroKg">What the zero took off.</param>
/// <param name="TiltKg">What the tilt correction added; absent when it is off, refused or has no tilt to go by.</param>
/// <param name="Uncertainty">What the calibration leaves uncertain.</param>
/// <param name="IsTimed">Whether the samples carry the pad's own time.</param>
/// <param name="State">How the pad stands.</param>
/// <param name="Faults">What is wrong with it.</param>
internal readonly record struct PadBlock(double? LoadKg, double? ZeroKg, double? TiltKg, CalibrationUncertainty Uncertainty, bool IsTimed, PadState State, IReadOnlyList<Diagnostic> Faults)
{
    /// <summary>What uncertainty about the tilt leaves in its correction, one standard uncertainty; 0 where nothing is corrected.</summary>
    public double TiltUncertaintyKg { get; init; }

    /// <summary>Identity of the calibration that made the load; empty without one.</summary>
    public string Calibration { get; init; } = "";

    /// <summary>Whether that calibration comes from known masses.</summary>
    public bool IsCalibrated { get; init; }
}
