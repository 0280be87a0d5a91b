using ScaleLink.Daemon.Configuration;
using ScaleLink.Protocol.Readings;

namespace ScaleLink.Daemon.Links;

/// <summary>A pad that cannot say who it is: the bay file says it, and its readings get what else a sample needs.</summary>
internal static class DeclaredPad
{
    /// <summary>
    /// Without a serial number, zero and calibration hang on the port and the slave: stable as long as the bay file names the port by its
    /// socket.
    /// </summary>
    public static PadIdentity Identity(PadConfiguration pad, string device, int cells, double rateHz) =>
        new(pad.SerialNumber ?? device, "", 0, cells, rateHz, pad.CapacityKg ?? 0);

    public static RawSample Sample(in PadReading reading, long arrivalNs)
    {
        var counts = new CellCounts();
        for (var cell = 0; cell < reading.Cells; cell++)
            counts[cell] = reading[cell];
        return new RawSample
        {
            ArrivalNs = arrivalNs,
            Counts = counts,
            Cells = reading.Cells,
            Status = reading.Status,
            PitchDegrees = reading.PitchDegrees,
            RollDegrees = reading.RollDegrees,
            TemperatureCelsius = reading.TemperatureCelsius,
        };
    }
}
