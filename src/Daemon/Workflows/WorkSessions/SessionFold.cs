using ScaleLink.Daemon.Workflows.WorkSessions.Checks;
using ScaleLink.Daemon.Workflows.WorkSessions.Standings;
using ScaleLink.Daemon.Workflows.WorkSessions.Steps;
using ScaleLink.Measure;
using ScaleLink.Weighing.Statics;
using ScaleLink.Weighing.WorkSessions.Learning;

namespace ScaleLink.Daemon.Workflows.WorkSessions;

/// <summary>Applies steps to a session. Judges nothing: what stands in the ledger has been accepted.</summary>
internal static class SessionFold
{
    /// <summary>The session after one more step.</summary>
    /// <exception cref="InvalidOperationException">What the step stands on is not there: an entry before it was lost.</exception>
    public static WorkSession Apply(WorkSession session, SessionStep step, DateTimeOffset at, string who, long entry)
    {
        ArgumentNullException.ThrowIfNull(session);
        if (!HasFooting(session, step))
            throw new InvalidOperationException("the step that it builds on is missing");
        if (step is TurnsCorrected corrected)
            return Correct(session, corrected, new(step, at, who, entry));
        return (step switch
        {
            CheckSet check => session with { Marks = session.Marks.SetItem(check.Key, new(check.Done, check.Skipped, check.Value, check.Note, who, at)) },
            ChecksTicked ticked => session with { Marks = session.Marks.SetItems(ticked.Keys.Select(key => KeyValuePair.Create(key, new CheckMark(true, false, "", "", who, at) { Together = true }))) },
            WeighingTaken weighing => Weigh(session, weighing, at, who, entry),
            AdjustmentRecorded a => session with { Open = session.Open.Add(new(a.Turns, a.Predicted, a.Note, who, at, entry)) },
            AdjustmentUndone { Corner: { } corner } => session with { Open = OpenAdjustments.Without(session, corner) },
            AdjustmentUndone => session with { Open = session.Open.RemoveAt(session.Open.Count - 1) },
            ChangeNamed named => Name(session, named, at, who, entry),
            StepConfirmed => WithNewest(session, Newest(session) with { Answered = true, AfterNaming = [] }) with { Known = Learn(session.KnownBefore!, Newest(session), OpenBefore(session), confirmed: true) },
            CautionsRead => session with { Cautioned = session.Cautioned.SetItem(who, at) },
            HeightsEntered h => session with { Heights = (h.HeightsMm, session.TurnsSinceBaseline) },
            SessionEnded end => session with { End = end, EndedAt = at },
            _ => session,
        }) with { Entry = entry, Steps = session.Steps.Add(new(step, at, who, entry)) };
    }

    // All that was learned since rests on what was turned: the steps are gone through once more.
    private static WorkSession Correct(WorkSession session, TurnsCorrected step, PastStep past)
    {
        var weighing = session.Weighings[step.Weighing];
        var recorded = weighing.Correction?.Recorded ?? weighing.Adjustment?.Turns ?? default;
        var begin = WorkSession.Begin(session.Start, session.Id, session.StartedAt, session.Who, session.Entry) with { Corrections = session.Corrections.SetItem(step.Weighing, new(recorded, step.Turns, past.Who, past.At, past.Entry)) };
        var again = session.Steps.Where(s => s.Step is not TurnsCorrected).Aggregate(begin, (so, s) => Apply(so, s.Step, s.At, s.Who, s.Entry));
        return again with { Entry = past.Entry, Steps = session.Steps.Add(past), Open = again.Known is { } known ? OpenAdjustments.Foreseen(again.Open, known) : again.Open };
    }

    private static bool HasFooting(WorkSession session, SessionStep step) => step switch
    {
        WeighingTaken { Kind: not WeighingKind.Baseline } => session.Known is not null,
        AdjustmentUndone => session.Open.Count > 0,
        TurnsCorrected corrected => corrected.Weighing > 0 && corrected.Weighing < session.Weighings.Count,
        ChangeNamed or StepConfirmed => session.KnownBefore is not null,
        _ => true,
    };

    private static WorkSession Weigh(WorkSession session, WeighingTaken step, DateTimeOffset at, string who, long entry)
    {
        var correction = session.Corrections.GetValueOrDefault(session.Weighings.Count);
        var turns = correction?.Done ?? session.OpenTurns;
        var known = session.Known is null ? null : session.KnownAs(step.Reading);
        var weighing = new SessionWeighing
        {
            Number = session.Weighings.Count,
            Step = step,
            TurnsSinceBaseline = session.TurnsSinceBaseline + turns,
            Adjustment = correction is null ? OpenAdjustments.Joined(session, entry) : OpenAdjustments.Corrected(correction, known!),
            Correction = correction,
            Answered = correction is not null,
            AfterNaming = correction is not null && known!.Record(new StepRecord(turns, step.Reading.ForSteps)).Check.Finding is { } finding ? [finding] : [],
            At = at,
            Who = who,
            Entry = entry,
            Counts = step.Kind != WeighingKind.Verification,
        };
        var next = session with
        {
            Weighings = session.Weighings.Add(weighing),
            Open = [],
            Heights = step.HeightsMm is { } mm ? (mm, weighing.TurnsSinceBaseline) : session.Heights,
            Known = known,
            KnownBefore = known,
            NeedsName = step.NeedsName && correction is null,
        };
        return step switch
        {
            { Kind: WeighingKind.Baseline } => next with { Known = Start(session, step.Reading) },
            { Kind: WeighingKind.Verification } => next,
            _ when next.NeedsName => next,
            _ => next with { Known = Learn(known!, weighing, turns, confirmed: false) },
        };
    }

    private static StepLearner Start(WorkSession session, RecordedWeighing reading)
    {
        var car = session.BarsAreOff ? session.Car.WithBars(connected: false) : session.Car;
        return StepLearner.Start(new CarStatics(car, reading.LoadsKg.Sum), reading.ForSteps, session.Start.SettleMethod.RepeatabilityPercent);
    }

    private static StepLearner Learn(StepLearner known, SessionWeighing weighing, Corners turns, bool confirmed) =>
        known.Record(new StepRecord(turns, weighing.Step.Reading.ForSteps, Confirmed: confirmed)).Next;

    private static WorkSession Name(WorkSession session, ChangeNamed named, DateTimeOffset at, string who, long entry)
    {
        // What was put right later has the last word.
        if (Newest(session).Correction is not null)
            return session;
        var newest = Newest(session) with { Answered = true };
        if (named.Other is { } other)
        {
            var aside = session.Weighings.ConvertAll(c => c with { Counts = false });
            return session with
            {
                Weighings = aside.SetItem(aside.Count - 1, newest with { ChangeName = other }),
                Known = session.KnownBefore!.Restart(newest.Step.Reading.ForSteps),
                NeedsName = false,
            };
        }

        var turns = named.Turns ?? default;
        var changed = turns == default ? newest : newest with
        {
            TurnsSinceBaseline = newest.TurnsSinceBaseline + turns,
            Adjustment = new(turns, null, "named afterwards", who, at, entry),
            AfterNaming = session.KnownBefore!.Record(new StepRecord(turns, newest.Step.Reading.ForSteps)).Check.Finding is { } finding ? [finding] : [],
        };
        return WithNewest(session, changed) with
        {
            Known = Learn(session.KnownBefore!, newest, turns, confirmed: turns == default),
            NeedsName = false,
        };
    }

    private static SessionWeighing Newest(WorkSession session) => session.Weighings[^1];

    private static WorkSession WithNewest(WorkSession session, SessionWeighing weighing) => session with { Weighings = session.Weighings.SetItem(session.Weighings.Count - 1, weighing) };

    private static Corners OpenBefore(WorkSession session) => Newest(session).Adjustment?.Turns ?? default;
}
