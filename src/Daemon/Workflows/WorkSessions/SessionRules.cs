using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Workflows.WorkSessions.Checks;
using ScaleLink.Daemon.Workflows.WorkSessions.Standings;
using ScaleLink.Daemon.Workflows.WorkSessions.Steps;
using ScaleLink.Measure;
using ScaleLink.Weighing.WorkSessions.Learning;
using ScaleLink.Weighing.WorkSessions.Planning;

namespace ScaleLink.Daemon.Workflows.WorkSessions;

/// <summary>Which steps may be taken when, and what goes on record with them. Each gives the step, or refuses with code and remedy.</summary>
internal static class SessionRules
{
    // Further than any thread goes.
    private const double MostTurns = 30;
    // On the pads the bars' preload shows as a change of cross weight beyond what settling does (95 %).
    private const double Sure = 2;

    public static CheckSet Check(SessionView view, string key, bool done, bool skip, string value, string note)
    {
        NotEnded(view);
        var known = view.Preparation.Concat(view.LastSteps).Any(c => c.Item.Key == key);
        if (!known)
            throw new StepRefusedException(SessionCodes.NoSuchCheck, $"This session has no check {key}.", $"Checks: {string.Join(", ", view.Preparation.Concat(view.LastSteps).Select(c => c.Item.Key))}.");
        if (view.Session.Baseline is not null && view.Preparation.Any(c => c.Item.Key == key))
            throw new StepRefusedException(SessionCodes.NotInThisState, "The baseline is on record; the preparation cannot be changed behind its back.", "Name what changed after the next reading, or start a new session.");
        if (skip && note.Length == 0)
            throw new StepRefusedException(SessionCodes.InputUnusable, "A skipped check needs a reason.", "Enter the reason as a note.");
        if (done && !skip && view.Preparation.Concat(view.LastSteps).First(c => c.Item.Key == key) is { IsSeenOtherwise: true, Seen: { } seen })
            throw new StepRefusedException(SessionCodes.SeenOtherwise, seen.Findings is [var finding, ..] ? $"The bay sees it otherwise: {finding.Message}" : (Sentence)"The bay sees it otherwise.",
                "See to it, and it ticks itself; or leave it out with the reason.");
        if (done && !skip && key == CheckLists.BarsVerified && view.LastSteps.First(c => c.Item.Key == key).Seen is null)
            throw new StepRefusedException(SessionCodes.NotInThisState, "No reading with bars connected is on record.", "Connect them, settle the car, and weigh: that answers it. Or leave it out with the reason.");
        return new(key, done && !skip, skip, value, note);
    }

    /// <summary>Everything that is open and that the bay does not look at for itself is ticked together.</summary>
    public static ChecksTicked TickRemaining(SessionView view)
    {
        NotEnded(view);
        Need(view, SessionStage.Preparing, SessionStage.Finishing);
        var open = (view.Stage == SessionStage.Preparing ? view.Preparation : view.LastSteps).Where(c => !c.IsClosed).ToList();
        // What is answered by a reading is no matter of ticks, and neither is what leads to it.
        var keys = open.Where(c => !c.IsSeenOtherwise && c.Item.Key is not (CheckLists.BarsAgain or CheckLists.BarsVerified)).Select(c => c.Item.Key).ToList();
        return keys.Count > 0 ? new(keys)
            : throw new StepRefusedException(SessionCodes.NotInThisState, open.Count == 0 ? "Nothing is open." : $"What is open has to be seen to: {string.Join(", ", open.Select(c => c.Item.Title.ToLowerInvariant()))}.",
                open.Count == 0 ? "Go on with the next step." : "See to each, and it ticks itself; or leave it out with the reason.");
    }

    public static AdjustmentRecorded Adjust(SessionView view, Corners? turns, bool asPlanned, string note)
    {
        var known = Weighed(view);
        Need(view, SessionStage.Planning, SessionStage.Settling, SessionStage.Finishing);
        var made = asPlanned ? PerchWork.Of(view.Session)?.Left ?? default : turns ?? default;
        if (made == default)
            throw new StepRefusedException(SessionCodes.InputUnusable, asPlanned ? "Nothing is left to turn." : "No turns are given.", "Give the turns that were made, up positive, for example RF 0.5.");
        Turnable(made, known);
        var all = view.Session.OpenTurns + made;
        return new(made, asPlanned, note, StatedPrediction.Of(all, PerchPlanner.Forecast(known, all)));
    }

    public static AdjustmentUndone Undo(SessionView view, Corner? corner = null)
    {
        NotEnded(view);
        if (view.Session.Open.All(a => corner is { } c && a.Turns[c] == 0))
            throw new StepRefusedException(SessionCodes.NotInThisState, corner is { } none ? $"Nothing is recorded at {none} since the last reading." : "Nothing is recorded since the last reading.",
                "What was weighed can be corrected: say what was really turned before that reading.");
        return new(corner);
    }

    /// <summary>Something else was turned before a reading than was written down.</summary>
    public static TurnsCorrected Correct(SessionView view, int number, Corners turns)
    {
        NotEnded(view);
        var known = Weighed(view);
        if (number < 1 || number >= view.Session.Weighings.Count || view.Session.Weighings[number] is not { Counts: true, ChangeName: "", Step.Kind: WeighingKind.Settle } weighing)
            throw new StepRefusedException(SessionCodes.InputUnusable, $"There is no reading {number} before which turns can be corrected.", "Give the number of a reading after the baseline that counts.");
        if (view.Session.NeedsName && number == view.Session.Weighings.Count - 1)
            throw new StepRefusedException(SessionCodes.NotInThisState, "The change of that reading has no name yet.", "Name it: the turns that were made, something else, or nothing.");
        Turnable(turns, known);
        if (turns == (weighing.Adjustment?.Turns ?? default))
            throw new StepRefusedException(SessionCodes.InputUnusable, "That is what is on record.", "Give what was really turned, all four corners.");
        return new(number, turns);
    }

    /// <summary>Whether a reading is wanted at all, asked before anybody looks whether there is one.</summary>
    public static void MayWeigh(SessionView view)
    {
        if (view.Stage == SessionStage.Preparing)
            throw new StepRefusedException(SessionCodes.NotInThisState, $"Open checks before the baseline: {string.Join(", ", view.Preparation.Where(c => !c.IsClosed).Select(c => c.Item.Title))}.", "Tick them, or skip them with a reason.");
        Need(view, SessionStage.Baseline, SessionStage.Planning, SessionStage.Settling, SessionStage.Finishing);
    }

    public static WeighingTaken Weigh(SessionView view, RecordedWeighing reading, Corners? heights, string note)
    {
        Heights(heights);
        MayWeigh(view);
        if (view.Session.Weighings is [.., var last] && reading.IsSameRestAs(last.Step.Reading))
            throw new StepRefusedException(SessionCodes.SameRest, "The car has not moved since the last reading: it would be the same one again.", "Settle the car anew (roll or bounce), hands off, then weigh.");
        if (view.Session.Known is null)
            return new(WeighingKind.Baseline, reading, heights, note, view.Facts.Seen, false, NominalOnly(reading), []);
        return view.Session.Open.Count > 0 ? AfterTurns(view.Session, reading, heights, note)
            : view.LastSteps.Any(c => c.Item.Key == CheckLists.BarsAgain && c.IsDone) ? Verify(view.Session, reading, heights, note)
            : Again(view.Session, reading, heights, note);
    }

    public static ChangeNamed Name(SessionView view, Corners? turns, string? other)
    {
        Need(view, SessionStage.Naming);
        var known = Weighed(view);
        Turnable(turns ?? default, known);
        return turns == default(Corners) ? new(null, null) : new(turns, other);
    }

    /// <summary>Whether the newest step left a surprise that the crew can stand by.</summary>
    public static bool MayConfirm(SessionView view) =>
        view.Session is { End: null, NeedsName: false, Open.Count: 0, Weighings: [.., { Adjustment: not null, OpenFindings.Count: > 0 }] };

    public static StepConfirmed Confirm(SessionView view)
    {
        NotEnded(view);
        return MayConfirm(view) ? new()
            : throw new StepRefusedException(SessionCodes.NotInThisState, "The newest step gave no surprise that could be confirmed.", "Weigh again, or go on with the plan.");
    }

    public static HeightsEntered EnterHeights(SessionView view, Corners heights)
    {
        NotEnded(view);
        Heights(heights);
        return new(heights);
    }

    public static CautionsRead ReadCautions(SessionView view, string who)
    {
        NotEnded(view);
        return view.Session.Cautioned.ContainsKey(who) ? throw new StepRefusedException(SessionCodes.NotInThisState, $"{who} has read the cautions of this session already.", "Go on with the next step.") : new();
    }

    public static SessionEnded Finish(SessionView view, string anyway)
    {
        NotEnded(view);
        var open = view.LastSteps.Where(c => !c.IsClosed).Select(c => c.Item.Title).ToList();
        if (anyway.Length == 0 && (view.Stage != SessionStage.Finishing || open.Count > 0))
            throw new StepRefusedException(SessionCodes.NotFinished,
                view.Stage == SessionStage.Finishing ? $"Last steps are open: {string.Join(", ", open)}." : "Cross weight is not on target, or a reading is missing.",
                "Go on, or finish anyway with a reason.");
        if (anyway.Length == 0 && Standing.Of(view.Session) is { Verdict: not Aim.Within } undecided)
            throw new StepRefusedException(SessionCodes.NotFinished, $"It is not sure that cross weight is on target: {undecided.Words}.",
                undecided.MoreSettles is { } more ? $"Settle {Standing.Times(more)} more and weigh each time, or finish anyway with a reason." : "Settling again will not decide it: better the calibration or the patch, widen the tolerance next time, or finish anyway with a reason.");
        return new(false, anyway, Standing.Of(view.Session)?.Words ?? "no reading was taken");
    }

    public static SessionEnded Abandon(SessionView view, string because)
    {
        NotEnded(view);
        return new(true, because, Standing.Of(view.Session)?.Words ?? "no reading was taken");
    }

    /// <summary>Why perches cannot turn so; null when they can.</summary>
    public static Diagnostic? CannotBe(Corners turns, StepLearner known)
    {
        foreach (var corner in Corners.All)
            if (!(Math.Abs(turns[corner]) <= MostTurns) || (turns[corner] != 0 && !known.Effects.Statics.Car.Suspension[corner].Perch.CanTurn))
                return new(SessionCodes.InputUnusable, $"{corner} cannot turn by {turns[corner]}.", "Give turns as numbers, and none for a fixed perch; correct the car file if it does turn.");
        return null;
    }

    private static void Turnable(Corners turns, StepLearner known)
    {
        if (CannotBe(turns, known) is { } mistake)
            throw new StepRefusedException(mistake.Code, mistake.Message, mistake.Remedy);
    }

    private static WeighingTaken AfterTurns(WorkSession session, RecordedWeighing reading, Corners? heights, string note)
    {
        var check = session.KnownAs(reading).Record(new StepRecord(session.OpenTurns, reading.ForSteps)).Check;
        return new(WeighingKind.Settle, reading, heights, note, [], false, check.Finding is { } finding ? [finding] : [], check.Causes);
    }

    private static WeighingTaken Again(WorkSession session, RecordedWeighing reading, Corners? heights, string note)
    {
        var change = UnnamedChange.Since(session, reading);
        return new(WeighingKind.Settle, reading, heights, note, [], change is not null, change is null ? [] : [change.Finding], []);
    }

    private static WeighingTaken Verify(WorkSession session, RecordedWeighing reading, Corners? heights, string note)
    {
        var standing = Standing.Of(session)!;
        var change = reading.ForSteps.CrossWeightPercent.Estimate - SwitchedPatch.CrossWeightPercent(session, reading) - standing.CrossWeightPercent.Estimate;
        var uncertainty = Sure * standing.Repeatability.Percent * Math.Sqrt(1 + 1.0 / standing.Settles);
        List<Diagnostic> findings = Math.Abs(change) <= uncertainty ? [] :
            [new(SessionCodes.BarsPreloaded, $"With the bars connected cross weight is {change:+0.00;-0.00} % off; settling alone does {uncertainty:0.00} % at most.", "A drop link is preloaded: adjust its length until the bolt slides in, settle and weigh again.")];
        return new(WeighingKind.Verification, reading, heights, note, [], false, findings, []);
    }

    private static List<Diagnostic> NominalOnly(RecordedWeighing reading) => reading.NominalOnly.Count == 0 ? [] :
        [new(SessionCodes.PadsNotCalibrated, $"The baseline was taken on pads that are nominal only: {string.Join(", ", reading.NominalOnly)}.", "Changes are good all the same; totals and shares are as good as the nominal sensitivity.")];

    private static StepLearner Weighed(SessionView view) => view.Session.Known
        ?? throw new StepRefusedException(SessionCodes.NotInThisState, "There is no baseline yet.", "Finish the preparation, settle the car, and weigh the baseline first.");

    private static void Heights(Corners? heights)
    {
        if (heights is { } mm && Corners.All.ToArray().Any(c => !(mm[c] is > 0 and < 1000)))
            throw new StepRefusedException(SessionCodes.InputUnusable, "A ride height is not between 0 and 1000 mm.", "Measure all four in mm, at the same marks each time.");
    }

    private static void NotEnded(SessionView view) => Need(view, [.. Enum.GetValues<SessionStage>().Where(s => s is not (SessionStage.Finished or SessionStage.Abandoned))]);

    private static void Need(SessionView view, params IReadOnlyList<SessionStage> stages)
    {
        if (!stages.Contains(view.Stage))
            throw new StepRefusedException(SessionCodes.NotInThisState, $"The session waits for something else: {SessionWords.Next(view)}", "Do that first.");
    }
}
