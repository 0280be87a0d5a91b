using ScaleLink.Daemon.Bay;
using ScaleLink.Measure;
using ScaleLink.Weighing.Calibration.Flow;
using ScaleLink.Weighing.Pads;

namespace ScaleLink.Daemon.Workflows.Calibration;

/// <summary>The pad on the bench as a calibration procedure sees it at one instant.</summary>
/// <param name="Seen">Its last seconds; absent when <paramref name="Missing"/> says why.</param>
/// <param name="Missing">The pad is not live, or another one.</param>
internal sealed record BenchReading(PadObservation? Seen, Diagnostic? Missing)
{
    /// <summary>Looks at the pad of a calibration procedure.</summary>
    public static BenchReading Of(LiveBay bay, ProcedureRecord procedure)
    {
        ArgumentNullException.ThrowIfNull(bay);
        ArgumentNullException.ThrowIfNull(procedure);
        var (flow, corner) = (procedure.Flow, procedure.Corner);
        if (bay.Pads.FirstOrDefault(p => p.Corner == corner)?.Observe(flow.Scale?.SpanKgPerCount) is not { } seen)
            return new BenchReading(null, PadStateCodes.NotLive.Because(corner.ToString()));
        return seen.Identity.SerialNumber == flow.Plan.Before.Pad
            ? new BenchReading(Fresh(seen, procedure.LastReadAt), null)
            : new BenchReading(null, CalibrationCodes.ReadingOfOtherPad.Because($"{seen.Identity.SerialNumber} is at {corner}, the calibration procedure is of {flow.Plan.Before.Pad}"));
    }

    /// <summary>What would come of taking it now.</summary>
    public FlowAnswer Offer(LiveBay bay, ProcedureFlow flow, string because = "") => Seen is { } seen
        ? flow.Take(seen.Reading with { BayLoadsKg = Loads(bay) }, because)
        : new FlowAnswer(flow, [Missing!]);

    // No sample counts twice: a reading under the same load begins where the last one ended, also when that was taken back.
    private static PadObservation Fresh(PadObservation seen, DateTimeOffset? last)
    {
        var since = (seen.Reading.Time - last)?.TotalSeconds ?? double.PositiveInfinity;
        if (since >= PadRest.WindowSeconds)
            return seen;
        var progress = Math.Min(seen.Rest.Progress, Math.Max(0, since / PadRest.WindowSeconds));
        return seen with { Rest = seen.Rest with { Progress = progress, Settled = false }, Reading = seen.Reading with { Settled = false } };
    }

    private static Corners? Loads(LiveBay bay)
    {
        var loads = bay.Pads.ToDictionary(p => p.Corner, p => p.Snapshot().LoadKg);
        return Corners.All.ToArray().All(c => loads.GetValueOrDefault(c) is not null) ? Corners.From(c => loads[c]!.Value) : null;
    }
}
