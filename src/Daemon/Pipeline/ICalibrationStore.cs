using ScaleLink.Weighing.Calibration;

namespace ScaleLink.Daemon.Pipeline;

/// <summary>Calibrations by pad, kept across restarts.</summary>
public interface ICalibrationStore
{
    /// <summary>The calibration last put into force for that pad; nothing when it was never proved.</summary>
    PadCalibration? InForce(string serialNumber);
}
