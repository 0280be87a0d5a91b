using Grpc.Core;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Bay.Tests.Calibration;

/// <summary>
/// SIGKILL at random instants while a pad is being calibrated: whatever was acknowledged is there afterwards, at most the one request that
/// was on its way besides, and the calibration procedure goes on. Four times here; 200 times with SCALELINK_LONG=1.
/// </summary>
[Trait("needs", "bay")]
public sealed class KillTests(ITestOutputHelper output) : IDisposable
{
    private const string Corner = "RF";
    private static readonly bool IsLong = Environment.GetEnvironmentVariable("SCALELINK_LONG") == "1";

    private readonly Random _chance = new(20261125);
    private readonly BayRig _bay = new("noise,quantisation,offset,dead-load");
    private string _procedure = "";
    private int _points;
    private int _onItsWay;

    [Fact]
    public void Killed_at_random_instants_a_calibration_procedure_loses_nothing_that_was_acknowledged()
    {
        _bay.Zero();
        Begin();
        var (kills, inFlight) = (IsLong ? 200 : 4, 0);
        for (var k = 0; k < kills; k++)
        {
            WorkUntilKilled(k % 2 == 0);
            _bay.RestartDaemon();
            var view = _bay.Daemon.CalibrationProcedures.WatchOnce(Corner);
            Assert.Equal(_procedure, view.ProcedureId);
            Assert.InRange(view.Points.Count, _points, _points + _onItsWay);
            inFlight += view.Points.Count - _points;
            _points = view.Points.Count;
            Assert.Empty(Directory.GetFiles(Path.GetDirectoryName(_bay.BayFile)!, "*.damaged-*"));
            Assert.DoesNotContain(_bay.Daemon.Pads.ListPads(new ListPadsRequest()).Pads, p => p.Faults.Any(f => f.Code == "SL-361"));
            if (k % 20 == 19)
                output.WriteLine($"{k + 1} kills");
            if (view.State == ProcedureState.Review)
                BeginAnew();
        }

        output.WriteLine($"{kills} kills, {_points} points at the end, {inFlight} unacknowledged requests were in the ledger all the same");
    }

    public void Dispose() => _bay.Dispose();

    private void Begin()
    {
        var request = new StartProcedureRequest { Corner = ProcedureAsking.CornerOf(Corner), Repetitions = 5, Preloads = 0, Who = "test" };
        request.Masses.AddRange(CalibrationCrew.Labels.Select(l => new KnownMass { Label = l, Kg = 50, WeightClass = "M1" }));
        request.Loads.AddRange([Stack(2), Stack(4)]);
        _bay.WaitLive();
        _procedure = _bay.Daemon.CalibrationProcedureControl.StartProcedure(request).ProcedureId;
        _points = 0;
    }

    // Reached in the long run only: the whole calibration procedure is decided, and the next one begun, before the next kill.
    private void BeginAnew()
    {
        _bay.Daemon.CalibrationProcedureControl.AdoptCalibration(new AdoptCalibrationRequest { Corner = ProcedureAsking.CornerOf(Corner), Who = "test" });
        Begin();
    }

    // Every other kill falls on a request that is being written; the rest anywhere between.
    private void WorkUntilKilled(bool whileWriting)
    {
        _onItsWay = 0;
        if (whileWriting)
        {
            var step = WaitReady();
            _onItsWay = 1;
            var record = _bay.Daemon.CalibrationProcedureControl.RecordPointAsync(new RecordPointRequest { Corner = ProcedureAsking.CornerOf(Corner), StepNumber = step, Who = "test" }).ResponseAsync;
            Thread.Sleep(_chance.Next(0, 25));
            _bay.Daemon.Process.Kill();
            Acknowledge(record);
        }
        else
        {
            var end = Environment.TickCount64 + _chance.Next(0, 3000);
            while (Environment.TickCount64 < end)
                if (_bay.Daemon.CalibrationProcedures.WatchOnce(Corner) is { Ready: true, Step: { } step })
                    Record(step);
                else
                    Serve();
            _bay.Daemon.Process.Kill();
        }

        Assert.True(_bay.Daemon.Process.WaitForExit(Wait.Patience));
    }

    private uint WaitReady()
    {
        ProcedureView? view = null;
        Wait.Until(() => { Serve(); return (view = _bay.Daemon.CalibrationProcedures.WatchOnce(Corner)).Ready || view.State != ProcedureState.Measuring; }, Wait.Patience, () => $"ready: {view}");
        if (view!.State == ProcedureState.Review)
        {
            BeginAnew();
            return WaitReady();
        }

        return view.Step.Number;
    }

    private void Record(ProcedureStep step)
    {
        try
        {
            _bay.Daemon.CalibrationProcedureControl.RecordPoint(new RecordPointRequest { Corner = ProcedureAsking.CornerOf(Corner), StepNumber = step.Number, Who = "test" });
            _points++;
        }
        catch (RpcException e) when (e.StatusCode == StatusCode.FailedPrecondition)
        {
            // The noise of a moment: tried again.
        }
    }

    private void Acknowledge(Task<ProcedureView> record)
    {
        try
        {
            record.Wait(TimeSpan.FromSeconds(10));
            (_points, _onItsWay) = (_points + 1, 0);
        }
        catch (AggregateException)
        {
            // Killed before the answer: the point may be in the ledger or not.
        }
    }

    // Puts down what the step asks for.
    private void Serve()
    {
        if (_bay.Daemon.CalibrationProcedures.WatchOnce(Corner).Step is { } step)
            _bay.Simulator.Do($$"""{"do":"mass","corner":"{{Corner}}","kg":{{step.LoadKg}},"at_once":true}""");
    }

    private static LoadStack Stack(int count) => new() { Masses = { CalibrationCrew.Labels.Take(count) } };
}
