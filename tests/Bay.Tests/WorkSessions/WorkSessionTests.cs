using Bay.Tests.Asking;
using Grpc.Core;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Bay.Tests.WorkSessions;

/// <summary>
/// A whole work session against the real daemon and a car with physics of its own: friction, scrub and noise are on, its
/// springs and bars are not the file's to the last digit. The limits are the project's own requirement; no published source.
/// </summary>
[Trait("needs", "bay")]
public class WorkSessionTests
{
    private const int MostSteps = 3;
    private const int MostSettles = 6;

    [Fact]
    public void The_plan_brings_the_car_on_target_in_three_steps_although_the_daemon_is_killed_on_the_way()
    {
        using var bay = new BayRig("friction,scrub,run-out,noise,quantisation", seed: 11);
        var crew = new CrewAtWork(bay);
        bay.Zero();
        crew.ChooseHeron();
        Refused(bay, "SL-560", () => bay.Daemon.WorkSessionControl.Weigh(new WeighRequest { By = CrewAtWork.By }));
        Assert.Equal(SessionState.Baseline, crew.Prepare().State);
        bay.Simulator.DoAndWait("""{"do":"lower"}""");

        var session = crew.SettleAndWeigh();
        Assert.Equal(SessionState.Planning, session.State);
        Assert.InRange(session.Standing.CrossWeightPercent.Estimate, 51, 54);
        // The same rest would be the same reading again.
        Refused(bay, "SL-568", () => bay.Daemon.WorkSessionControl.Weigh(new WeighRequest { By = CrewAtWork.By }));

        var steps = 0;
        // A settle that fell just outside although the steps say that the car stands well is answered by another settle, not by a turn.
        for (var settles = 0; session.State == SessionState.Planning && settles < MostSettles; settles++)
        {
            if (session.Plan is { AlreadyThere: false } plan)
                session = Step(bay, crew, plan, ++steps == 1);
            else
                session = crew.SettleAndWeigh();
        }

        Assert.Equal(SessionState.Finishing, session.State);
        Assert.InRange(steps, 1, MostSteps);
        var truth = bay.Simulator.Do("""{"do":"truth"}""")["cross_weight_pct"]!.GetValue<double>();
        Assert.InRange(truth, 50 - 0.35, 50 + 0.35);
        Finish(bay, crew);
        Export(bay, session.Id);
    }

    private static Session Step(BayRig bay, CrewAtWork crew, PerchPlan plan, bool isFirst)
    {
        var session = bay.Daemon.WorkSessionControl.RecordAdjustment(new RecordAdjustmentRequest { By = CrewAtWork.By, AsPlanned = true });
        Assert.Equal(plan.Turns, session.OpenAdjustments[0].Turns);
        if (isFirst)
            KillDaemon(bay, session);
        crew.Turn(plan.Turns);
        session = crew.SettleAndWeigh();
        var predicted = session.Weighings[^1].Adjustment.Predicted.CrossWeightPercent;
        // Four standard uncertainties: a step that was made as planned is rarely further off.
        Assert.InRange(session.Weighings[^1].Loads.CrossWeightPercent.Estimate - predicted.Estimate, -4 * predicted.StandardUncertainty, 4 * predicted.StandardUncertainty);
        return session;
    }

    private static void KillDaemon(BayRig bay, Session before)
    {
        bay.Daemon.Process.Kill();
        bay.RestartDaemon();
        var after = new CrewAtWork(bay).Session;
        Assert.Equal(before.Entry, after.Entry);
        Assert.Equal(SessionState.Settling, after.State);
        Assert.Equal(before.OpenPrediction, after.OpenPrediction);
        bay.WaitLive();
    }

    private static void Finish(BayRig bay, CrewAtWork crew)
    {
        Refused(bay, "SL-566", () => bay.Daemon.WorkSessionControl.FinishSession(new FinishSessionRequest { By = CrewAtWork.By }));
        for (var more = 0; crew.Session.Standing.Verdict == AimVerdict.TooCloseToTell && more < 5; more++)
            crew.SettleAndWeigh();
        foreach (var check in crew.Session.LastSteps.Where(c => c.Key != "bars_without_preload"))
            bay.Daemon.WorkSessionControl.SetCheck(new SetCheckRequest { By = CrewAtWork.By, Key = check.Key, Done = true });
        bay.Simulator.Do("""{"do":"bars","front":true,"rear":true}""");
        var verified = crew.SettleAndWeigh();
        Assert.False(verified.Weighings[^1].Counts);
        var check2 = verified.LastSteps.Single(c => c.Key == "bars_without_preload");
        // The simulated drop links have one length: whether they slide in without preload is the car's matter, that it is told is the session's.
        Assert.Equal(check2.Findings.Count == 0, check2.Done);
        if (!check2.Done)
            bay.Daemon.WorkSessionControl.SetCheck(new SetCheckRequest { By = CrewAtWork.By, Key = check2.Key, Skip = true, Note = "links have one length" });
        var ended = bay.Daemon.WorkSessionControl.FinishSession(new FinishSessionRequest { By = CrewAtWork.By, AnywayBecause = verified.Standing.Verdict == AimVerdict.OnTarget ? "" : "five settles do not decide it" });
        Assert.Equal(SessionState.Finished, ended.State);
        Assert.Contains("Student t", ended.Ending);
        Assert.Null(crew.Session);
    }

    private static void Export(BayRig bay, string id)
    {
        string Text(ExportFormat format) => bay.Daemon.WorkSessions.ExportSession(new ExportSessionRequest { SessionId = id, Format = format }).Content.ToStringUtf8();
        var shown = bay.Daemon.WorkSessions.ShowSession(new ShowSessionRequest { SessionId = id });
        Assert.Equal(1 + shown.Weighings.Count, Text(ExportFormat.Csv).Trim().Split('\n').Count(l => !l.StartsWith('#')));
        Assert.Equal(shown, Google.Protobuf.JsonParser.Default.Parse<Session>(Text(ExportFormat.Json)));
        Assert.Contains("<svg", Text(ExportFormat.Html));
        Assert.Equal(id, bay.Daemon.WorkSessions.ListSessions(new ListSessionsRequest()).Sessions[0].Id);
    }

    private static void Refused(BayRig bay, string code, Action step)
    {
        var failure = Assert.Throws<RpcException>(step);
        Assert.Equal(code, Calls.In(failure));
        Assert.Equal(StatusCode.FailedPrecondition, failure.StatusCode);
        Assert.False(bay.Daemon.Process.HasExited);
    }
}
