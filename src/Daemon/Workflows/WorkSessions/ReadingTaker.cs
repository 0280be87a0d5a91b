using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Daemon.Workflows.WorkSessions.Steps;
using ScaleLink.Measure;

namespace ScaleLink.Daemon.Workflows.WorkSessions;

/// <summary>Takes the present reading for the record, or says why not.</summary>
internal sealed class ReadingTaker(LiveBay live, BayClock clock)
{
    private const long OldestNs = Nanoseconds.PerSecond;
    // What is another error after the next settle.
    private static readonly string[] FromReadingToReading = [UncertaintyPart.Rocking, UncertaintyPart.Placing];

    public RecordedWeighing Take()
    {
        if (Present is not { } reading)
            throw new StepRefusedException(SessionCodes.NotReady, "There is no present reading.", "See whether the pads are live: scalelink pads.");
        if (!IsReady(reading))
            throw new StepRefusedException(SessionCodes.NotReady, $"The reading is not ready for the record: {(reading.Verdict == BayVerdict.Settled ? "it has settled only a moment ago." : reading.Remark)}", "Hands off the car and the pads; wait until it has been settled for a moment.");
        return Of(reading);
    }

    /// <summary>The present reading when it could be taken now; null otherwise.</summary>
    public RecordedWeighing? Peek() => Present is { } reading && IsReady(reading) ? Of(reading) : null;

    private BayReading? Present => live.Newest is { } reading && clock.NowNs - reading.AtNs <= OldestNs ? reading : null;

    private static bool IsReady(BayReading reading) => reading.WeighingReady && reading.Corners.All(c => c.LoadKg is not null && c.Budget.Count > 0);

    private RecordedWeighing Of(BayReading reading)
    {
        var rest = live.Rest;
        return new()
        {
            LoadsKg = Corners.From(c => reading.Corners[(int)c].LoadKg!.Value.Estimate),
            RepeatUKg = Corners.From(c => Joined(reading, c, p => FromReadingToReading.Contains(p.Name))),
            StandingUKg = Corners.From(c => Joined(reading, c, p => !FromReadingToReading.Contains(p.Name))),
            AlikeUKg = Corners.From(c => Joined(reading, c, p => p.Name == UncertaintyPart.Alike)),
            PerhapsAlikeUKg = Corners.From(c => Joined(reading, c, p => p.Name == UncertaintyPart.PerhapsAlike)),
            Calibrations = [.. reading.Corners.Select(c => c.Calibration)],
            NominalOnly = [.. reading.Corners.Where(c => !c.Calibrated).Select(c => c.Corner)],
            Patch = PatchInReading.Of(reading),
            StartId = clock.StartId,
            Seq = reading.Seq,
            RestSinceNs = rest.SinceNs,
            RestWasSeen = rest.WasSeen,
        };
    }

    private static double Joined(BayReading reading, Corner corner, Func<UncertaintyPart, bool> counts) =>
        Math.Sqrt(reading.Corners[(int)corner].Budget.Where(counts).Sum(p => p.StandardUncertaintyKg * p.StandardUncertaintyKg));
}
