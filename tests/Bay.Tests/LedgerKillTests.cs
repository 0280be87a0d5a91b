using System.Collections.Concurrent;
using System.Text.Json;
using System.Text.Json.Nodes;
using Bay.Tests.Calibration;
using Grpc.Core;
using Microsoft.Data.Sqlite;
using ScaleLink.Api.V1;
using Shared;
using Shared.Rig;

namespace Bay.Tests;

/// <summary>
/// SIGKILL at random instants while steps of every kind of workflow pour in from two sides: each step that was acknowledged is in the ledger, and the ledger
/// is whole. Each step is taken by somebody of a name of his own, so that it is found again. Four kills here; 200 with SCALELINK_LONG=1. The project's own requirement.
/// </summary>
[Trait("needs", "bay")]
public sealed class LedgerKillTests(ITestOutputHelper output) : IDisposable
{
    private const int Crews = 2, LongestWorkMs = 400, LongWorkMs = 3000;
    private static readonly int Kills = Environment.GetEnvironmentVariable("SCALELINK_LONG") == "1" ? 200 : 4;

    private readonly Random _chance = new(20261130);
    private readonly BayRig _bay = new("noise,quantisation,offset,dead-load");
    private readonly ConcurrentDictionary<string, string> _acknowledged = [];
    private readonly JsonNode _car = JsonNode.Parse(File.ReadAllText(RepositoryRoot.File("docs", "cars", "heron.json")), documentOptions: new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true })!;
    private int _people;

    public void Dispose() => _bay.Dispose();

    [Fact]
    public async Task No_acknowledged_step_of_any_workflow_is_lost_by_a_kill_at_any_instant()
    {
        _bay.Zero();
        for (var kill = 0; kill < Kills; kill++)
        {
            var crews = Enumerable.Range(0, Crews).Select(crew => Task.Run(() => Work(new Random(1000 * kill + crew)))).ToArray();
            // Every other kill may fall into the start, the rest into work that is under way.
            var before = _acknowledged.Count;
            if (kill % 2 == 1)
                Wait.Until(() => _acknowledged.Count > before, Wait.Patience, "work is under way");
            await Task.Delay(_chance.Next(0, kill % 4 == 3 ? LongWorkMs : LongestWorkMs), TestContext.Current.CancellationToken);
            _bay.Daemon.Process.Kill();
            await Task.WhenAll(crews).WaitAsync(Wait.Patience, TestContext.Current.CancellationToken);
            _bay.RestartDaemon();
            Assert.Empty(Directory.GetFiles(Path.GetDirectoryName(_bay.BayFile)!, "*.damaged-*"));
            Assert.DoesNotContain(_bay.Daemon.Pads.ListPads(new ListPadsRequest()).Pads.SelectMany(p => p.Faults), f => f.Code is "SL-361" or "SL-363");
            var onRecord = OnRecord();
            Assert.Empty(_acknowledged.Where(step => !onRecord.Contains(step.Key)).Select(step => $"{step.Key}: {step.Value}"));
            if (kill % 8 == 3)
                _bay.WaitLive();
        }

        Assert.NotEmpty(_acknowledged);
        output.WriteLine($"{Kills} kills; acknowledged: {string.Join(", ", _acknowledged.Values.CountBy(what => what).OrderBy(c => c.Key).Select(c => $"{c.Value} {c.Key}"))}");
    }

    private void Work(Random chance)
    {
        try
        {
            while (true)
                Take(chance.Next(14));
        }
        catch (RpcException)
        {
            // The daemon is gone.
        }
    }

    // A step that is refused is none, and none is on record.
    private void Take(int which)
    {
        var who = $"crew member {Interlocked.Increment(ref _people)}";
        try
        {
            if (Step(which, who) is { } what)
                _acknowledged[who] = what;
        }
        catch (RpcException e) when (e.StatusCode is StatusCode.FailedPrecondition or StatusCode.InvalidArgument or StatusCode.NotFound or StatusCode.Aborted)
        {
            // Another order of steps.
        }
    }

    private string? Step(int which, string who)
    {
        var daemon = _bay.Daemon;
        var by = new StepBy { Who = who };
        switch (which)
        {
            case 0: daemon.CarControl.SaveCar(new SaveCarRequest { File = Car(who), Who = who }); return "car saved";
            case 1: daemon.CarControl.UseCar(new UseCarRequest { Name = daemon.Cars.ListCars(new ListCarsRequest()).Cars.LastOrDefault()?.Name ?? "", Who = who }); return "car chosen";
            case 2: daemon.CarControl.ReleaseCar(new ReleaseCarRequest { Who = who }); return "car released";
            case 3: daemon.PatchControl.SaveHeightMeasurement(new SaveHeightMeasurementRequest { HeightMeasurement = Heights(), Who = who }); return "heights of the pads";
            case 4: daemon.PatchControl.ClearHeightMeasurement(new ClearHeightMeasurementRequest { Who = who }); return "heights cleared";
            case 5: daemon.PatchControl.SetCorrection(new SetCorrectionRequest { Name = "slope", On = who.EndsWith('1'), Who = who }); return "correction";
            case 6: daemon.WorkSessionControl.StartSession(new StartSessionRequest { By = by }); return "session begun";
            case 7: daemon.WorkSessionControl.SetCheck(new SetCheckRequest { By = by, Key = "tyres", Skip = true, Note = "none" }); return "check";
            case 8: daemon.WorkSessionControl.EnterHeights(new EnterHeightsRequest { By = by, HeightsMm = new() { Lf = 100, Rf = 101, Lr = 102, Rr = 103 } }); return "ride heights";
            case 9: daemon.WorkSessionControl.AbandonSession(new AbandonSessionRequest { By = by, Because = "another one" }); return "session given up";
            case 10: daemon.CalibrationProcedureControl.StartProcedure(Procedure(who)); return "calibration begun";
            case 11: daemon.CalibrationProcedureControl.AbandonProcedure(new AbandonProcedureRequest { Corner = Corner.Lf, Who = who, Reason = "another one" }); return "calibration given up";
            case 12: daemon.InclinometerZeroControl.ReadTilt(new ReadTiltRequest { Corner = Corner.Lr, Who = who }); return "tilt read";
            default: return daemon.Control.ZeroPads(new ZeroPadsRequest { Corners = { Corner.Rr }, Who = who }).Results.All(r => r.Zero is not null) ? "zero" : null;
        }
    }

    private string Car(string who)
    {
        lock (_car)
        {
            _car["name"] = $"Heron of {who}";
            return _car.ToJsonString();
        }
    }

    private static HeightMeasurement Heights()
    {
        var heights = new HeightMeasurement { Note = "laser" };
        heights.Heights.AddRange(((Corner[])[Corner.Lf, Corner.Rf, Corner.Lr, Corner.Rr]).Select(c => new PadHeight { Corner = c, Mm = (int)c, StandardUncertaintyMm = 0.1 }));
        return heights;
    }

    private static StartProcedureRequest Procedure(string who)
    {
        var request = new StartProcedureRequest { Corner = Corner.Lf, Repetitions = 3, Preloads = 0, Who = who };
        request.Masses.AddRange(CalibrationCrew.Labels.Select(l => new KnownMass { Label = l, Kg = 50, WeightClass = "M1" }));
        request.Loads.Add(new LoadStack { Masses = { CalibrationCrew.Labels.Take(2) } });
        return request;
    }

    private HashSet<string> OnRecord()
    {
        using var ledger = new SqliteConnection($"Data Source={Path.Combine(Path.GetDirectoryName(_bay.BayFile)!, "ledger.db")};Mode=ReadOnly;Pooling=False");
        ledger.Open();
        using var query = ledger.CreateCommand();
        query.CommandText = "SELECT who FROM entries";
        using var reader = query.ExecuteReader();
        HashSet<string> who = [];
        while (reader.Read())
            who.Add(reader.GetString(0));
        return who;
    }
}
