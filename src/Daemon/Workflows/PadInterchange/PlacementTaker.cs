using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Daemon.Workflows.WorkSessions;
using ScaleLink.Weighing.PadInterchange;

namespace ScaleLink.Daemon.Workflows.PadInterchange;

/// <summary>Takes the settled loads of this moment together with the pads that they stand on.</summary>
internal sealed class PlacementTaker(LiveBay bay, ReadingTaker readings, BayClock clock)
{
    /// <summary>Serial number of the pad at each corner, in the order LF, RF, LR, RR; empty where nobody knows.</summary>
    public IReadOnlyList<string> Present => [.. bay.Pads.Select(p => p.Standing.Identity?.SerialNumber ?? "")];

    /// <summary>The weighing of this moment.</summary>
    /// <exception cref="StepRefusedException">The car is not at rest, or a pad is missing.</exception>
    public PlacementReading Take()
    {
        var reading = readings.Take();
        return new PlacementReading(clock.ToUtc(clock.NowNs),
            [.. bay.Pads.Select(p => Placed(p, reading.LoadsKg[p.Corner], reading.Calibrations[(int)p.Corner]))]);
    }

    // A pad that was plugged in between the loads and this look is another one than the loads are of.
    private static PlacedPad Placed(PadChannel pad, double kg, string calibration) =>
        pad.Standing is { Identity: { } identity, Zero: { } zero, Calibration: { } now } && now.Identity == calibration
            ? new PlacedPad(identity.SerialNumber, kg, calibration, zero.TakenAt)
            : throw new StepRefusedException(PadStateCodes.NotLive.Because(pad.Corner.ToString()));
}
