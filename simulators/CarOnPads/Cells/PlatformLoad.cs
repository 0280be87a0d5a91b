namespace CarOnPads.Cells;

/// <summary>What stands on a platform: kilograms, and their moments about its middle (kg m forward and left).</summary>
readonly record struct PlatformLoad(double Kg, double ForwardMoment, double LeftMoment, double CosineOfTilt)
{
    /// <summary>Share of one cell: a stiff plate on four equal feet.</summary>
    public double OnCell(bool front, bool left) =>
        Kg / 4
        + (front ? 1 : -1) * ForwardMoment / (4 * Platform.Reach)
        + (left ? 1 : -1) * LeftMoment / (4 * Platform.Reach);
}
