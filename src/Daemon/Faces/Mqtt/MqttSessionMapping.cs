using ScaleLink.Daemon.Runtime;
using ScaleLink.Daemon.Workflows.WorkSessions;
using ScaleLink.Daemon.Workflows.WorkSessions.Standings;
using ScaleLink.Measure;
using ScaleLink.Weighing.WorkSessions.Planning;

namespace ScaleLink.Daemon.Faces.Mqtt;

/// <summary>Puts the work session and its readings into MQTT payloads.</summary>
internal sealed class MqttSessionMapping(BayClock clock)
{
    private const string NoSession = "none";

    public MqttSession Session(SessionView? view)
    {
        var none = new MqttSession { T = MqttMapping.Utc(clock.ToUtc(clock.NowNs)), StartId = clock.StartId, State = NoSession };
        if (view is null)
            return none;
        var session = view.Session;
        var standing = Standing.Of(session);
        var (turn, predicted) = NextTurn(session);
        return none with
        {
            State = MqttMapping.Word(view.Stage),
            Id = session.Id,
            Entry = session.Entry,
            Car = session.Car.Name,
            Title = session.Start.Title.Length > 0 ? session.Start.Title : null,
            StartedAt = MqttMapping.Utc(session.StartedAt),
            TargetCrossWeightPercent = session.Start.TargetPercent,
            TargetTolerancePercent = session.Start.TolerancePercent,
            Weighings = session.Weighings.Count,
            Adjustments = session.Weighings.Count(c => c.Adjustment is not null),
            CrossWeightPercent = standing is null ? null : MqttValue.Of(standing.CrossWeightPercent),
            ExpandedPercent = standing is null ? null : Math.Round(standing.CrossWeightPercent.HalfWidth(), 4),
            Settles = standing?.Settles,
            Verdict = standing is null ? null : Word(standing.Verdict),
            Turn = turn,
            Left = Left(session),
            PredictedCrossWeightPercent = predicted is { } p ? MqttValue.Of(p) : null,
            Next = SessionWords.Next(view),
            Findings = Findings(view.Findings),
        };
    }

    public static MqttWeighing Weighing(WorkSession session, SessionWeighing weighing)
    {
        var reading = weighing.Step.Reading;
        var (loads, whole) = (reading.LoadsKg, reading.Whole);
        return new()
        {
            T = MqttMapping.Utc(weighing.At),
            StartId = reading.StartId,
            Seq = reading.Seq,
            Session = session.Id,
            Car = session.Car.Name,
            Number = weighing.Number,
            Kind = MqttMapping.Word(weighing.Step.Kind),
            Counts = weighing.Counts,
            Corners = Corners.All.ToArray().ToDictionary(c => c.ToString(), c => new MqttCorner(
                Math.Round(loads[c], 3), Math.Round(Math.Sqrt(whole.Covariance.DiagonalPart[c]), 4), !reading.NominalOnly.Contains(c), reading.Calibrations[(int)c], null)),
            TotalKg = MqttValue.Of(whole.TotalKg),
            CrossWeightPercent = MqttValue.Of(whole.CrossWeightPercent),
            FrontWeightPercent = MqttValue.Of(whole.FrontWeightPercent),
            LeftSideWeightPercent = MqttValue.Of(whole.LeftSideWeightPercent),
            FrontLeftRightDifferenceKg = MqttValue.Of(whole.FrontLeftRightDifferenceKg),
            RearLeftRightDifferenceKg = MqttValue.Of(whole.RearLeftRightDifferenceKg),
            Turns = weighing.Adjustment is { } adjustment ? Corners.All.ToArray().ToDictionary(c => c.ToString(), c => adjustment.Turns[c]) : null,
            PredictedCrossWeightPercent = weighing.Adjustment?.Predicted is { } predicted ? MqttValue.Of(predicted.CrossWeightPercent) : null,
            Findings = Findings(weighing.OpenFindings),
        };
    }

    // What was turned and waits for its reading, or else what the plan says.
    private static (string? Words, Value? Predicted) NextTurn(WorkSession session)
    {
        if (session.Open is [.., var open])
            return (CrewWords.Turns(session.OpenTurns), open.Predicted?.CrossWeightPercent);
        return !session.NeedsName && SessionPlan.Of(session)?.Plan is { AlreadyThere: false } plan ? (CrewWords.Turns(plan.Turns), plan.Forecast.CrossWeightPercent) : (null, null);
    }

    private static string? Left(WorkSession session) => !session.NeedsName && PerchWork.Of(session) is { } work && work.Left != default ? CrewWords.Turns(work.Left) : null;

    private static List<MqttDiagnostic>? Findings(IReadOnlyList<Diagnostic> findings) => findings.Count == 0 ? null : [.. findings.Select(f => new MqttDiagnostic(f.Code.Text, f.Message, f.Remedy))];

    private static string Word(Aim verdict) => verdict switch
    {
        Aim.Within => "on_target",
        Aim.TooCloseToTell => "too_close_to_tell",
        Aim.High => "high",
        _ => "low",
    };
}
