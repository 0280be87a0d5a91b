using ScaleLink.Weighing.Pads;

namespace ScaleLink.Daemon.Bay;

/// <summary>Calibrations by pad, kept across restarts.</summary>
internal interface ICalibrationStore
{
    /// <summary>The calibration last put into effect for that pad; nothing when it was never calibrated.</summary>
    PadCalibration? InEffect(string serialNumber);
}
