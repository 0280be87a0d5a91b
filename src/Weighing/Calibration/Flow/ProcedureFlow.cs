using System.Text.Json.Serialization;
using ScaleLink.Weighing.Calibration.Masses;
using ScaleLink.Weighing.Calibration.Procedure;
using ScaleLink.Weighing.Calibration.Results;
using ScaleLink.Weighing.Pads;

namespace ScaleLink.Weighing.Calibration.Flow;

/// <summary>A reading that was taken for a step.</summary>
sealed record TakenReading(ProcedureStep Step, PadReading Reading)
{
    /// <summary>Why the pad was taken as empty although it did not look so; absent when it did.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Because { get; init; }
}

/// <summary>How a calibration procedure ended.</summary>
/// <param name="Stage">Accepted or abandoned.</param>
/// <param name="Who">By whom.</param>
/// <param name="Time">When, UTC.</param>
/// <param name="Reason">Why it was abandoned; empty when accepted.</param>
sealed record ProcedureEnding(ProcedureStage Stage, string Who, DateTimeOffset Time, string Reason);

/// <summary>What came of an event: the flow afterwards, unchanged when refused.</summary>
sealed record FlowAnswer(ProcedureFlow Flow, IReadOnlyList<Diagnostic> Refusals)
{
    /// <summary>True when the event was accepted.</summary>
    public bool Accepted => Refusals.Count == 0;
}

/// <summary>
/// The guided calibration procedure of one pad: which load comes next, which readings are good, when it is done. An immutable value made
/// of the plan, the readings and the ending, nothing else; so it can be written down after every event and taken up again
/// after a restart. Knows no clock and no pad: readings come from outside.
/// </summary>
sealed record ProcedureFlow
{
    /// <summary>The plan.</summary>
    public required ProcedurePlan Plan { get; init; }

    /// <summary>Readings taken, in the order taken.</summary>
    public IReadOnlyList<TakenReading> Readings { get; init; } = [];

    /// <summary>Steps that somebody left out.</summary>
    public IReadOnlyList<ProcedureStep> Skipped { get; init; } = [];

    /// <summary>How it ended; null while it goes on.</summary>
    public ProcedureEnding? Ending { get; init; }

    /// <summary>Where the calibration procedure stands.</summary>
    [JsonIgnore]
    public ProcedureStage Stage => Ending?.Stage ?? Pending?.Stage ?? ProcedureStage.Review;

    /// <summary>What to do next; null when no reading is wanted.</summary>
    [JsonIgnore]
    public NextStep? Next
    {
        get
        {
            if (Ending is not null || Pending is not { } step)
                return null;
            var before = Readings.Count == 0 ? LoadStack.Empty : Readings[^1].Step.Load;
            var script = ProcedureScript.Of(Plan);
            var change = Plan.Masses.Kg(step.Load) - Plan.Masses.Kg(before);
            return new NextStep(step, script.Index().First(s => s.Item == step).Index + 1, script.Count,
                ProcedureScript.Words(step, before), LoadCellLimits.SettlingSeconds(change))
            {
                ChangeKg = step.Load.Ballast.SequenceEqual(before.Ballast) ? change : null,
                // No reading shows whether the load was moved, or whether ballast or a small mass has come.
                // A pad without a sensitivity cannot tell either whether it is empty, or whether its first load is the right one.
                IsUntold = Scale is null ? step.Load != before || Readings.Count == 0 : step.Load == before
                    ? step.Spot.Length > 0
                    : Math.Abs(change) < Plan.Limits.SmallChangeKg || !step.Load.Ballast.SequenceEqual(before.Ballast),
            };
        }
    }

    /// <summary>What turns its counts into kilograms while it runs; null before the first known load of a pad without a sensitivity.</summary>
    [JsonIgnore]
    public PadCalibration? Scale => FoundSensitivity.Of(Plan, Readings);

    /// <summary>What is still to be lifted.</summary>
    [JsonIgnore]
    public PlanEffort EffortLeft => PlanEffort.Of(Plan.Masses, Ending is null ? Left : [], Readings.Count == 0 ? LoadStack.Empty : Readings[^1].Step.Load);

    ProcedureStep? Pending => Left.FirstOrDefault();

    IEnumerable<ProcedureStep> Left
    {
        get
        {
            var done = Readings.Select(r => r.Step).Concat(Skipped).ToHashSet();
            return ProcedureScript.Of(Plan).Where(step => !done.Contains(step));
        }
    }

    /// <summary>Begins a calibration procedure.</summary>
    /// <exception cref="RefusedException">The plan has a mistake; <see cref="ProcedurePlanCheck"/> lists all of them.</exception>
    public static ProcedureFlow Begin(ProcedurePlan plan) =>
        ProcedurePlanCheck.Of(plan) is [var first, ..] ? throw new RefusedException(first) : new ProcedureFlow { Plan = plan };

    /// <summary>Offers a reading for the present step.</summary>
    /// <param name="reading">Of the pad.</param>
    /// <param name="because">Why a pad that does not look empty is; empty to refuse it.</param>
    public FlowAnswer Take(PadReading reading, string because = "")
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (Ending is not null || Pending is not { } step)
            return No("no reading is wanted");

        var previous = Readings.Count == 0 ? null : Readings[^1];
        var loadChanged = previous is not null && previous.Step.Load != step.Load;
        var refusals = ReadingCheck.Of(reading, Plan.Before.CellTrim.Count, Plan.Limits,
            Readings.MinBy(r => r.Reading.Time)?.Reading, loadChanged ? previous!.Reading : null);
        if (refusals.Count > 0)
            return new FlowAnswer(this, refusals);
        var taken = new TakenReading(step, reading);
        if ((TooEarly(taken) ?? StepCheck.Of(Plan, taken, previous, Scale, EmptyReading(first: false))) is { } refusal)
            return new FlowAnswer(this, [refusal]);
        if (step.Load.IsEmpty && EmptyCheck.Of(Plan, reading, EmptyReading(first: true), Scale) is { } loaded)
        {
            if (because.Length == 0)
                return new FlowAnswer(this, [loaded]);
            taken = taken with { Because = because };
        }
        return new FlowAnswer(this with { Readings = [.. Readings, taken] }, []);
    }

    /// <summary>Takes the last reading back, and with it what was left out after it.</summary>
    public FlowAnswer StepBack()
    {
        if (Ending is not null || Readings.Count == 0)
            return No("there is no reading to take back");
        List<ProcedureStep> before = [.. ProcedureScript.Of(Plan).TakeWhile(step => step != Readings[^1].Step)];
        return new FlowAnswer(this with { Readings = [.. Readings.SkipLast(1)], Skipped = [.. Skipped.Where(before.Contains)] }, []);
    }

    /// <summary>Throws a repetition away, to be taken again from the empty pad; what was left out of it comes back too.</summary>
    public FlowAnswer RetakeRepetition(int repetition)
    {
        bool IsOther(ProcedureStep step) => step.Stage != ProcedureStage.Repetitions || step.Repetition != repetition;
        List<TakenReading> kept = [.. Readings.Where(r => IsOther(r.Step))];
        return Ending is not null || kept.Count == Readings.Count
            ? No($"repetition {repetition} has no readings")
            : new FlowAnswer(this with { Readings = kept, Skipped = [.. Skipped.Where(IsOther)] }, []);
    }

    /// <summary>Leaves the present step out.</summary>
    public FlowAnswer Skip() => Ending is not null || Pending is not { } step
        ? No("there is no step to leave out")
        : new FlowAnswer(this with { Skipped = [.. Skipped, step] }, []);

    /// <summary>Leaves all remaining steps out; whether the readings are enough, the report tells.</summary>
    public FlowAnswer Finish() => Ending is not null || Pending is null
        ? No("the measuring has ended")
        : new FlowAnswer(this with { Skipped = [.. Skipped, .. Left] }, []);

    /// <summary>The outcome of the readings so far; meant for the review.</summary>
    public ProcedureReport Report() => Stage is ProcedureStage.Review or ProcedureStage.Accepted
        ? ProcedureAssembly.Report(this)
        : new ProcedureReport { Refusals = [CalibrationCodes.OutOfStep.Because("readings are still missing")] };

    /// <summary>Accepts the calibration of <see cref="Report"/>.</summary>
    public FlowAnswer Accept(string who, DateTimeOffset time)
    {
        if (Stage != ProcedureStage.Review)
            return No("there is nothing to accept");
        var ended = this with { Ending = new ProcedureEnding(ProcedureStage.Accepted, who, time, "") };
        return Report().Refusals is { Count: > 0 } refusals ? new FlowAnswer(this, refusals) : new FlowAnswer(ended, []);
    }

    /// <summary>Gives the calibration procedure up; the calibration in effect stays.</summary>
    public FlowAnswer Abandon(string who, DateTimeOffset time, string reason) => Ending is not null
        ? No("the calibration procedure has ended")
        : new FlowAnswer(this with { Ending = new ProcedureEnding(ProcedureStage.Abandoned, who, time, reason) }, []);

    FlowAnswer No(string why) => new(this, [CalibrationCodes.OutOfStep.Because(why)]);

    Diagnostic? TooEarly(TakenReading taken)
    {
        if (taken.Step.MinutesHeld is not { } minutes || Readings.FirstOrDefault(r => r.Step.MinutesHeld == 0) is not { } first)
            return null;
        var held = taken.Reading.Time - first.Reading.Time;
        return held < TimeSpan.FromMinutes(minutes)
            ? CalibrationCodes.OutOfStep.Because($"the load has stood for {held.TotalMinutes:0.0} of {minutes} minutes")
            : null;
    }

    PadReading? EmptyReading(bool first)
    {
        var empty = Readings.Where(r => r.Step.Load.IsEmpty);
        return (first ? empty.FirstOrDefault() : empty.LastOrDefault())?.Reading;
    }
}
