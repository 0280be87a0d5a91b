using ScaleLink.Daemon.Contract;
using ScaleLink.Daemon.Workflows.WorkSessions.Standings;
using ScaleLink.Daemon.Workflows.WorkSessions.Steps;
using ScaleLink.Measure;
using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.WorkSessions.Planning;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.WorkSessions.Service;

/// <summary>Work sessions in the words of the public API.</summary>
internal static class SessionMapping
{
    public static Wire.Session Session(SessionView view)
    {
        var session = view.Session;
        var start = session.Start;
        var wire = new Wire.Session
        {
            Id = session.Id,
            State = State(view.Stage),
            Bay = start.Bay,
            Car = session.Car.Name,
            CarHash = start.CarHash,
            Title = start.Title,
            Who = session.Who,
            StartedAt = session.StartedAt.ToWire(),
            EndedAt = session.EndedAt?.ToWire(),
            TargetCrossWeightPercent = start.TargetPercent,
            TargetTolerancePercent = start.TolerancePercent,
            SettleMethod = SettleMethod(start.SettleMethod),
            Next = SessionWords.Next(view),
            TurnsSinceBaseline = session.TurnsSinceBaseline.ToWire(),
            HeightsMm = session.HeightsNowMm?.ToWire(),
            Entry = (ulong)session.Entry,
            Ending = session.End is { } end ? Ending(end) : "",
            CanConfirm = SessionRules.MayConfirm(view),
            SettlesAskedFor = (uint)view.SettlesAskedFor,
            WeighNext = view.IsReadingNext,
            CautionLine = SessionWords.CautionLine(view.Stage),
        };
        wire.Preparation.AddRange(view.Preparation.Select(c => Check(c, start)));
        wire.Weighings.AddRange(session.Weighings.Select(WeighingMapping.Weighing));
        wire.OpenAdjustments.AddRange(session.Open.Select(WeighingMapping.Adjustment));
        wire.Cautions.AddRange(SessionWords.Cautions(view));
        wire.SessionCautions.AddRange(Cautions.OfASession);
        wire.CautionsRead.AddRange(session.Cautioned.OrderBy(c => c.Value).Select(c => new Wire.CautionsRead { Who = c.Key, At = c.Value.ToWire() }));
        wire.Trace.AddRange(SessionTrace.Of(session).Select(WeighingMapping.Point));
        if (session.Known is not null)
            AddWeighed(wire, view);
        return wire;
    }

    public static string Ending(SessionEnded end) =>
        (end.Abandoned ? "abandoned" : "finished") + $": {end.Words}" + (end.Because.Length > 0 ? $" ({end.Because})" : "");

    public static Wire.SessionLine Line(SessionView view)
    {
        var session = view.Session;
        var line = new Wire.SessionLine
        {
            Id = session.Id,
            State = State(view.Stage),
            Car = session.Car.Name,
            Title = session.Start.Title,
            StartedAt = session.StartedAt.ToWire(),
            EndedAt = session.EndedAt?.ToWire(),
            Adjustments = (uint)session.Weighings.Count(c => c.Adjustment is not null),
            Weighings = (uint)session.Weighings.Count,
            Ending = session.End is { } end ? Ending(end) : "",
            CrossWeightsPercent = { session.Weighings.Select(w => w.CrossWeightPercent) },
            TargetCrossWeightPercent = session.Start.TargetPercent,
            TargetTolerancePercent = session.Start.TolerancePercent,
        };
        if (session.Baseline is { } baseline)
            (line.BaselineCrossWeightPercent, line.LastCrossWeightPercent) = (baseline.CrossWeightPercent, session.Weighings[^1].CrossWeightPercent);
        return line;
    }

    public static Wire.PerchPlan Plan(SessionPlan plan)
    {
        var wire = new Wire.PerchPlan { Caution = Cautions.Perches };
        wire.Findings.AddRange(plan.Findings.Select(WireValues.ToWire));
        if (plan.Plan is not { } p)
            return wire;
        (wire.Turns, wire.Words, wire.AlreadyThere, wire.Reaches) = (p.Turns.ToWire(), CrewWords.Turns(p.Turns), p.AlreadyThere, p.Reaches);
        wire.Predicted = WeighingMapping.Prediction(StatedPrediction.Of(p.Turns, p.Forecast));
        wire.Alternatives.AddRange(p.Alternatives.Select(a => a.Words.ToString()));
        wire.TypedAlternatives.AddRange(p.Alternatives.Select(a => Wire.Sentence.Whole(a.Words)));
        return wire;
    }

    private static void AddWeighed(Wire.Session wire, SessionView view)
    {
        var session = view.Session;
        var back = -1 * (session.TurnsSinceBaseline + session.OpenTurns);
        (wire.BackToBaseline, wire.BackToBaselineWords) = (back.ToWire(), CrewWords.Turns(back));
        if (Standing.Of(session) is { } standing)
            wire.Standing = WeighingMapping.Standing(standing);
        if (session.Open is [.., { Predicted: { } predicted }])
            wire.OpenPrediction = WeighingMapping.Prediction(predicted);
        wire.LastSteps.AddRange(view.LastSteps.Select(c => Check(c, session.Start)));
        if (session is { NeedsName: false, End: null } && SessionPlan.Of(session) is { } plan)
        {
            wire.Plan = Plan(plan);
            AddPerches(wire, session, PerchWork.Of(session)!);
        }

        wire.Findings.AddRange(view.Findings.Select(WireValues.ToWire));
    }

    private static void AddPerches(Wire.Session wire, WorkSession session, PerchWork work)
    {
        wire.Replanned = work.IsReplanned;
        wire.Perches.AddRange(Corners.All.ToArray().Select(c => new Wire.PerchTurn
        {
            Corner = c.ToWire(), Planned = work.Planned[c], Done = work.Done[c], Left = work.Left[c], CanTurn = session.Car.Suspension[c].Perch.CanTurn,
        }));
    }

    private static Wire.Check Check(CheckView view, SessionStarted start)
    {
        var wire = new Wire.Check
        {
            Key = view.Item.Key,
            Title = view.Item.Title,
            Hint = view.Item.Hint,
            Done = view.IsDone,
            Skipped = view.Mark is { Skipped: true },
            Value = view.Value,
            TypedValue = Wire.Sentence.Of(view.Value),
            Note = view.Mark?.Note ?? "",
            Seen = view.Mark is null && view.Seen is { Holds: true },
            SeenOtherwise = view.IsSeenOtherwise,
            Asks = view.Item.Asks,
            LastValue = start.LastValues?.GetValueOrDefault(view.Item.Key) ?? "",
            TickedTogether = view.Mark is { Together: true },
            Who = view.Mark?.Who ?? "",
            At = view.Mark?.At.ToWire(),
        };
        wire.Findings.AddRange((view.Seen?.Findings ?? []).Select(WireValues.ToWire));
        return wire;
    }

    private static Wire.SettleMethod SettleMethod(SettleMethod settleMethod)
    {
        var wire = new Wire.SettleMethod { RepeatabilityPercent = settleMethod.RepeatabilityPercent, DegreesOfFreedom = settleMethod.DegreesOfFreedom, FromSettles = (uint)settleMethod.FromSettles };
        wire.Actions.AddRange(settleMethod.Actions);
        return wire;
    }

    private static Wire.SessionState State(SessionStage stage) => stage switch
    {
        SessionStage.Preparing => Wire.SessionState.Preparing,
        SessionStage.Baseline => Wire.SessionState.Baseline,
        SessionStage.Planning => Wire.SessionState.Planning,
        SessionStage.Settling => Wire.SessionState.Settling,
        SessionStage.Naming => Wire.SessionState.Naming,
        SessionStage.Finishing => Wire.SessionState.Finishing,
        SessionStage.Finished => Wire.SessionState.Finished,
        SessionStage.Abandoned => Wire.SessionState.Abandoned,
        _ => Wire.SessionState.Unspecified,
    };
}
