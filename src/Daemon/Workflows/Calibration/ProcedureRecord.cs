using ScaleLink.Measure;
using ScaleLink.Weighing.Calibration.Flow;

namespace ScaleLink.Daemon.Workflows.Calibration;

/// <summary>How a calibration procedure stands.</summary>
internal enum ProcedureState
{
    /// <summary>Points are being read.</summary>
    Measuring,
    /// <summary>Somebody decides.</summary>
    Review,
    /// <summary>Its calibration was put into effect.</summary>
    Adopted,
    /// <summary>Finished, and its calibration not wanted.</summary>
    Rejected,
    /// <summary>Given up before it was finished.</summary>
    Abandoned,
}

/// <summary>One calibration procedure as the ledger knows it.</summary>
internal sealed record ProcedureRecord
{
    /// <summary>Number of the entry that began it.</summary>
    public required long Id { get; init; }

    /// <summary>Plan, readings, ending.</summary>
    public required ProcedureFlow Flow { get; init; }

    /// <summary>UTC.</summary>
    public required DateTimeOffset BegunAt { get; init; }

    /// <summary>By whom.</summary>
    public required string BegunBy { get; init; }

    /// <summary>It was finished before it ended without a calibration.</summary>
    public bool WasFinished { get; init; }

    /// <summary>When the last reading was taken, UTC, whether it was kept or not; absent before the first.</summary>
    public DateTimeOffset? LastReadAt { get; init; }

    /// <summary>The calibration that came of it; absent unless adopted.</summary>
    public AdoptedCalibration? Calibration { get; init; }

    /// <summary>The pad.</summary>
    public string SerialNumber => Flow.Plan.Before.Pad;

    /// <summary>The place of the pad.</summary>
    public Corner Corner => Flow.Plan.Corner;

    /// <summary>How it stands.</summary>
    public ProcedureState State => Flow.Stage switch
    {
        ProcedureStage.Accepted => ProcedureState.Adopted,
        ProcedureStage.Abandoned => WasFinished ? ProcedureState.Rejected : ProcedureState.Abandoned,
        ProcedureStage.Review => ProcedureState.Review,
        _ => ProcedureState.Measuring,
    };

    /// <summary>Whether it still goes on.</summary>
    public bool IsOpen => Flow.Ending is null;

    /// <summary>This after one more event. What was acknowledged once is not judged again.</summary>
    public ProcedureRecord After(ProcedureEvent happened, string who, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(happened);
        return happened switch
        {
            { Taken: { } taken } => this with { LastReadAt = taken.Reading.Time, Flow = Flow with { Readings = [.. Flow.Readings, taken] } },
            { Skipped: { } step } => this with { Flow = Flow with { Skipped = [.. Flow.Skipped, step] } },
            { SteppedBack: true } => this with { Flow = Flow.StepBack().Flow },
            { RepetitionAgain: { } repetition } => this with { Flow = Flow.RetakeRepetition(repetition).Flow },
            { Finished: true } => this with { Flow = Flow.Finish().Flow },
            { Ended: { } reason } => this with { WasFinished = Flow.Stage == ProcedureStage.Review, Flow = Flow.Abandon(who, at, reason).Flow },
            _ => this,
        };
    }

    /// <summary>This with its calibration in effect.</summary>
    public ProcedureRecord Adopted(AdoptedCalibration adopted)
    {
        ArgumentNullException.ThrowIfNull(adopted);
        return this with { Calibration = adopted, Flow = Flow with { Ending = new ProcedureEnding(ProcedureStage.Accepted, adopted.Who, adopted.At, "") } };
    }
}
