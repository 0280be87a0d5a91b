using ScaleLink.Daemon.Bay;

namespace ScaleLink.Daemon.Workflows.SiteCheck;

/// <summary>Looks whether the pads are fit to be watched: live, zeroed, empty.</summary>
internal static class SiteCheckStart
{
    // A tool or a boot; a zero that is off by more was not taken here.
    private const double EmptyKg = 1;

    public static IReadOnlyList<Diagnostic> Refusals(LiveBay bay) => [.. bay.Pads.Select(Refusal).OfType<Diagnostic>()];

    private static Diagnostic? Refusal(PadChannel pad)
    {
        var seen = pad.Snapshot();
        if (seen.State != PadState.Live)
            return new(SiteCheckCodes.PadNotLive, $"{pad.Corner} is not live{(seen.Faults is [var fault, ..] ? (Sentence)$" ({fault.Code}): {fault.Message}" : ".")}", "Repair its link first; scalelink pads names what is wrong.");
        if (seen.Zero is null || seen.Calibration is null)
            return new(SiteCheckCodes.PadUnzeroed, $"{pad.Corner} has no {(seen.Calibration is null ? "calibration" : "zero")}.", "Zero the empty pads first: scalelink zero, or Health on the page.");
        return seen.LoadKg is not { } load
            ? new(SiteCheckCodes.PadNotLive, $"{pad.Corner} gives no load yet.", "Ask again in a second.")
            : Math.Abs(load) > EmptyKg
            ? new(SiteCheckCodes.PadLoaded, $"{pad.Corner} reads {Kg(load):+0.0}.", "Take off whatever stands on it, the car first; if it is empty, zero it. Then start the watch.")
            : null;
    }
}
