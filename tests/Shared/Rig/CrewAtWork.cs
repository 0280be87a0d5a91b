using System.Diagnostics;
using Grpc.Core;
using ScaleLink.Api.V1;

namespace Shared.Rig;

/// <summary>A crew that works by the session alone: it does what the session says and reads nothing but what the daemon publishes.</summary>
internal sealed class CrewAtWork(BayRig bay)
{
    private const int MostBounces = 5;
    private static readonly TimeSpan NewRestWithin = TimeSpan.FromSeconds(5);

    public static StepBy By => new() { Who = "test crew" };

    public Session Session => bay.Daemon.WorkSessions.GetSession(new GetSessionRequest()).Session;

    /// <summary>The Heron of the documents is in the bay.</summary>
    public void ChooseHeron()
    {
        var car = bay.Daemon.CarControl.SaveCar(new SaveCarRequest { File = File.ReadAllText(RepositoryRoot.File("docs", "cars", "heron.json")), Who = "test crew" });
        bay.Daemon.CarControl.UseCar(new UseCarRequest { Name = car.Name, Who = "test crew" });
    }

    /// <summary>Everything that the bay does not see for itself is ticked or skipped.</summary>
    public Session Prepare()
    {
        // A test that failed has left its own.
        if (Session is { State: not (SessionState.Finished or SessionState.Abandoned or SessionState.Unspecified) })
            bay.Daemon.WorkSessionControl.AbandonSession(new AbandonSessionRequest { By = By, Because = "left by another test" });
        var session = bay.Daemon.WorkSessionControl.StartSession(new StartSessionRequest { By = By, Title = "Bramble Moor, Saturday" });
        foreach (var check in session.Preparation.Where(c => !c.Done))
            session = check.Key is "pads_proved" or "patch_level"
                ? bay.Daemon.WorkSessionControl.SetCheck(new SetCheckRequest { By = By, Key = check.Key, Skip = true, Note = "the simulator's pads are as they are" })
                : bay.Daemon.WorkSessionControl.SetCheck(new SetCheckRequest { By = By, Key = check.Key, Done = true });
        bay.Simulator.Do("""{"do":"bars","front":false,"rear":false}""");
        return session;
    }

    /// <summary>Rolls and bounces, waits until the reading is ready, and weighs; where the bay did not see the car move, it is bounced again, as the refusal says.</summary>
    public Session SettleAndWeigh()
    {
        for (var tries = 0; ; tries++)
        {
            Assert.InRange(tries, 0, MostBounces);
            bay.Simulator.DoAndWait("""{"do":"settle","by":"both","seconds":1.5}""");
            // Where the machine is slow the rest of before may still be the newest one known.
            for (var asked = Stopwatch.StartNew(); asked.Elapsed < NewRestWithin; Thread.Sleep(200))
                if (WeighUnlessUnmoved() is { } session)
                    return session;
        }
    }

    private Session? WeighUnlessUnmoved()
    {
        bay.Settled();
        try
        {
            return bay.Daemon.WorkSessionControl.Weigh(new WeighRequest { By = By });
        }
        catch (RpcException e) when (e.Status.Detail.Contains("SL-568", StringComparison.Ordinal))
        {
            return null;
        }
    }

    /// <summary>Turns the perches of the simulated car as the session has them on record.</summary>
    public void Turn(CornerNumbers turns)
    {
        foreach (var (corner, by) in new[] { ("LF", turns.Lf), ("RF", turns.Rf), ("LR", turns.Lr), ("RR", turns.Rr) }.Where(t => t.Item2 != 0))
            bay.Simulator.DoAndWait(FormattableString.Invariant($$"""{"do":"turn","corner":"{{corner}}","turns":{{by}}}"""));
    }
}
