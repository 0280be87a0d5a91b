using ScaleLink.Measure;
using ScaleLink.Weighing.Pads;

namespace ScaleLink.Daemon.Bay;

/// <summary>Calibrations by pad, kept across restarts.</summary>
internal interface ICalibrationStore
{
    /// <summary>The calibration last put into effect for that pad; nothing when it was never calibrated.</summary>
    PadCalibration? InEffect(string serialNumber);

    /// <summary>The calibration in effect of the pad that was calibrated last at that corner; nothing when none ever was.</summary>
    PadCalibration? LastAt(Corner corner);
}
