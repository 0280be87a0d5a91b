using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Weighing.InclinometerZeros;

namespace ScaleLink.Daemon.Workflows.InclinometerZeros;

/// <summary>Takes a settled mean of how an empty pad tilts, or says why not.</summary>
internal sealed class TiltTaker(double raisedBelowKg, BayClock clock)
{
    /// <summary>The reading of this moment, the zero of the inclinometer still in it.</summary>
    public (TiltReading? Reading, Diagnostic? Refused) Take(PadChannel pad)
    {
        if (pad.ObserveTilt() is not { } seen)
            return (null, new(PadStateCodes.NotLive, $"{pad.Corner} is not live.", "Repair its link first, then read again."));
        if (pad.Snapshot() is { LoadKg: { } load } && Math.Abs(load) >= raisedBelowKg)
            return (null, new(InclinometerCodes.PadLoaded, $"{pad.Corner} carries {Kg(load):0.0}: a pad is turned empty.", "Take the car or the masses off it. Zero the pad if it is empty."));
        if (seen.Samples.Count == 0)
            return (null, Unknown(pad));
        return seen.IsWhole && TiltRest.Read(seen.Samples, clock.ToUtc(clock.NowNs)) is { } reading
            ? (reading with { TemperatureC = seen.TemperatureC }, null)
            : (null, new(InclinometerCodes.PadNotAtRest, $"{pad.Corner} does not lie still.", $"Put it down, hands off, and wait {TiltRest.WindowSeconds:0} s; keep off the floor round it."));
    }

    // A sensor that has failed says so; one that was never there says nothing.
    private static Diagnostic Unknown(PadChannel pad) => pad.Snapshot().Faults.FirstOrDefault(f => f.Code == PadCodes.TiltSensorFailed || f.Code == PadCodes.TiltUnknown) is { } fault
        ? new(InclinometerCodes.TiltNotRead, $"{pad.Corner} does not say how it tilts ({fault.Code}): {fault.Message}", fault.Remedy)
        : new(InclinometerCodes.TiltNotRead, $"{pad.Corner} sends no tilt: it has no inclinometer, or none is named in the bay file.", "Give the pad an inclinometer, or name one under pads.tilt in the bay file.");
}
