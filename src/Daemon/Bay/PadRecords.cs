using ScaleLink.Weighing.Pads;

namespace ScaleLink.Daemon.Bay;

/// <summary>What is on record of the pads, and where the bay stands.</summary>
/// <param name="Zeros">Zeros by serial number.</param>
/// <param name="Calibrations">Calibrations by serial number.</param>
/// <param name="Here">For the gravity.</param>
internal sealed record PadRecords(IZeroStore Zeros, ICalibrationStore Calibrations, Place Here)
{
    /// <summary>Zeros of inclinometers by serial number; absent: none was ever tested.</summary>
    public IInclinometerZeroStore? InclinometerZeros { get; init; }
}
