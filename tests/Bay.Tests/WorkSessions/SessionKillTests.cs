using Bay.Tests.Asking;
using Grpc.Core;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Bay.Tests.WorkSessions;

/// <summary>
/// The daemon is killed (SIGKILL) at each kind of step of one session: while steps pour in, between two readings, after an adjustment, before
/// the verdict, after the end. What was acknowledged is there again, and the session goes on. The project's own requirement.
/// </summary>
[Trait("needs", "bay")]
public class SessionKillTests
{
    [Fact]
    public void Nothing_acknowledged_is_lost_wherever_in_a_session_the_daemon_is_killed()
    {
        using var bay = new BayRig("friction,noise,quantisation", seed: 5);
        var crew = new CrewAtWork(bay);
        bay.Zero();
        crew.ChooseHeron();
        crew.Prepare();
        bay.Simulator.DoAndWait("""{"do":"lower"}""");
        var baseline = crew.SettleAndWeigh();

        BetweenReadings(bay, crew, baseline);
        WhileStepsPourIn(bay, crew);
        AfterAnAdjustment(bay, crew);
        AtTheEnd(bay, crew);
    }

    private static void BetweenReadings(BayRig bay, CrewAtWork crew, Session before)
    {
        Kill(bay);
        Assert.Equal(before, crew.Session);
        // Nobody watched the car meanwhile, and it stands as it stood: the same reading once more.
        bay.Settled();
        Assert.Equal("SL-568", new Calls(bay).Code(d => d.WorkSessionControl.Weigh(new WeighRequest { By = CrewAtWork.By })));
        var again = crew.SettleAndWeigh();
        Assert.Equal(2u, again.Standing.Settles);
    }

    private static void WhileStepsPourIn(BayRig bay, CrewAtWork crew)
    {
        var (entry, heights) = (0ul, 0.0);
        using var killed = new ManualResetEventSlim();
        var pouring = new Thread(() =>
        {
            for (var mm = 100.0; !killed.IsSet; mm += 0.01)
                try
                {
                    var step = bay.Daemon.WorkSessionControl.EnterHeights(new EnterHeightsRequest { By = CrewAtWork.By, HeightsMm = new() { Lf = mm, Rf = mm, Lr = mm, Rr = mm } });
                    (entry, heights) = (step.Entry, mm);
                }
                catch (RpcException)
                {
                    return;
                }
        });
        pouring.Start();
        Wait.Until(() => Volatile.Read(ref heights) > 100.2, Wait.Patience, "steps pour in");
        bay.Daemon.Process.Kill();
        pouring.Join();
        killed.Set();
        bay.RestartDaemon();
        var after = crew.Session;
        // At most the one that was on its way when the daemon died may be there beyond what was acknowledged.
        Assert.InRange(after.Entry, entry, entry + 1);
        Assert.InRange(after.HeightsMm.Lf, heights - 1e-9, heights + 0.01 + 1e-9);
    }

    private static void AfterAnAdjustment(BayRig bay, CrewAtWork crew)
    {
        bay.WaitLive();
        var session = bay.Daemon.WorkSessionControl.RecordAdjustment(new RecordAdjustmentRequest { By = CrewAtWork.By, AsPlanned = true });
        Kill(bay);
        Assert.Equal(session, crew.Session);
        crew.Turn(session.OpenPrediction.Turns);
        session = crew.SettleAndWeigh();
        Assert.Equal(session.Weighings[^1].Adjustment.Turns, session.TurnsSinceBaseline);
        // The reading is on record, its verdict not yet looked at.
        Kill(bay);
        Assert.Equal(session, crew.Session);
        Assert.NotEqual(AimVerdict.Unspecified, crew.Session.Standing.Verdict);
    }

    private static void AtTheEnd(BayRig bay, CrewAtWork crew)
    {
        var ended = bay.Daemon.WorkSessionControl.FinishSession(new FinishSessionRequest { By = CrewAtWork.By, AnywayBecause = "the test ends here" });
        Kill(bay);
        Assert.Null(crew.Session);
        Assert.Equal(ended, bay.Daemon.WorkSessions.ShowSession(new ShowSessionRequest { SessionId = ended.Id }));
        Assert.Equal(SessionState.Preparing, bay.Daemon.WorkSessionControl.StartSession(new StartSessionRequest { By = CrewAtWork.By }).State);
    }

    private static void Kill(BayRig bay)
    {
        bay.Daemon.Process.Kill();
        bay.RestartDaemon();
        bay.WaitLive();
    }
}
