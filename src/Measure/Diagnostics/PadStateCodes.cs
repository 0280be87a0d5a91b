// Each code says by its own text what it means.
#pragma warning disable CS1591

namespace ScaleLink.Measure.Diagnostics;

/// <summary>What keeps a pad that is heard from giving a load that can be believed.</summary>
public static class PadStateCodes
{
    /// <summary>These codes together.</summary>
    public static CodeArea Area { get; } = new("The state of pads", "What keeps a pad that is heard from giving a load that can be believed.");

    public static readonly Code NoZero = Area.Declare(341, "The pad has no zero", "Empty the pads and take a zero.");
    public static readonly Code NoSensitivity = Area.Declare(342, "The pad has no sensitivity: it gives no load", "Give kg_per_count in the bay file, or calibrate the pad.");
    public static readonly Code NotLive = Area.Declare(343, "The pad is not live", "Repair its link first.");
    public static readonly Code PadChanged = Area.Declare(346, "The pad has come back with other cells or another capacity", "Calibrate it anew, or connect the pad that was calibrated.");
    public static readonly Code ZeroMovedSinceCalibration = Area.Declare(347, "The empty pad stands far from where it stood at its calibration", "Look for a hit, a bent platform or a damaged cell; then calibrate it anew.");
    public static readonly Code EmptyPadReads = Area.Declare(348, "The car is off, and the empty pad does not read zero", "Look for something on the pad; then take a zero before the car comes back.");
}
