using CarOnPads.Bench;
using CarOnPads.Cells;
using ScaleLink.Api.V1;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Workflows.Calibration.Service;
using ScaleLink.Weighing.Calibration.Procedure;
using ScaleLink.Weighing.Calibration.Results;
using ScaleLink.Weighing.Pads;
using KnownMass = ScaleLink.Api.V1.KnownMass;
using LoadStack = ScaleLink.Api.V1.LoadStack;

namespace Daemon.Tests.Workflows.Calibration;

/// <summary>
/// Ballast in place of masses not owned, and a load held for half an hour, from the request of the public API to the calibration in
/// force. The truth is what the simulator was told to put down, and how its cells creep; no published source.
/// </summary>
public class SpecialProcedureTests(ITestOutputHelper output)
{
    private const string Good = "noise,quantisation,dead-load,offset,span,hysteresis,clock-offset,clock-drift";

    [Fact]
    public void Eighty_kilograms_of_masses_and_ballast_calibrate_the_pads_to_four_hundred()
    {
        // Nobody knows what the ballast weighs; the crew has taken what lay about, near what the masses weigh.
        var ballast = new Dictionary<string, double> { ["ballast 1"] = 83.4, ["ballast 2"] = 77.9, ["ballast 3"] = 80.6, ["ballast 4"] = 78.8 };
        using var bay = Start(80, Good);
        List<ProcedureReport> reports = [];
        bay.Calibrate(pad => PlanReading.Plan(Request(pad, reach: 400), pad, bay.Records), (_, report) => reports.Add(report), ballast);
        foreach (var report in reports)
        {
            Assert.Empty(report.Refusals);
            Assert.InRange(report.Calibration!.CalibratedToKg, 390, 410);
            foreach (var piece in report.Curve!.Ballast)
            {
                output.WriteLine($"{report.Calibration.Pad} {piece.Label}: {piece.Kg:0.000} kg, u {piece.StandardUncertaintyKg:0.000}, truth {ballast[piece.Label]:0.000}");
                Assert.InRange(piece.Kg - ballast[piece.Label], -4 * piece.StandardUncertaintyKg, 4 * piece.StandardUncertaintyKg);
            }
        }

        bay.Zero();
        var off = new List<double>();
        foreach (var kg in (double[])[130, 250, 380])
        {
            bay.Put(kg);
            off.AddRange(bay.Pads.Select(p => (p.Snapshot().LoadKg!.Value - kg) / p.Snapshot().LoadUncertaintyKg!.Value));
        }

        output.WriteLine(string.Join(" ", off.Select(z => $"{z:0.0}")));
        Assert.InRange(off.Count(z => Math.Abs(z) <= 2), 11, 12);
    }

    [Fact]
    public void Half_an_hour_under_load_shows_how_the_pads_creep_and_the_budget_carries_it()
    {
        // Without noise, which would hide some of what is to be compared.
        using var bay = Start(10, "dead-load,offset,span,hysteresis,creep,clock-offset,clock-drift");
        Dictionary<string, Creep> found = [];
        bay.Calibrate(pad => PlanReading.Plan(Request(pad, creep: true), pad, bay.Records), (pad, report) =>
        {
            Assert.Empty(report.Refusals);
            Assert.DoesNotContain(BudgetTerms.Creep, report.TakenAsUsual);
            Assert.Contains(report.Calibration!.Budget(300).Terms, t => t.Name == BudgetTerms.Creep);
            found[report.Calibration.Pad] = report.Characteristics!.Creep!.Value;
        });
        var truth = Crept(bay);
        foreach (var (pad, creep) in found)
        {
            output.WriteLine($"{pad}: {creep.After30MinKg:+0.000;-0.000} kg in 30 min, {creep.From20To30MinKg:+0.000;-0.000} after 20; the cells crept by {truth[pad]:+0.000;-0.000} kg");
            // What the first reading saw already of this load and of the runs before it.
            Assert.Equal(truth[pad], creep.After30MinKg, 0.02);
            Assert.Equal(0, creep.From20To30MinKg, 0.01);
        }

        Assert.Contains(truth.Values, kg => Math.Abs(kg) > 0.05);
    }

    private static CalibrationBay Start(double hertz, string imperfections)
    {
        var bay = new CalibrationBay(new BayOptions { Seed = 3, Hertz = hertz, Raised = true, Imperfections = Imperfections.Parse(imperfections) });
        bay.Run(3);
        bay.Zero();
        return bay;
    }

    private static StartProcedureRequest Request(PadChannel pad, double? reach = null, bool creep = false)
    {
        var request = new StartProcedureRequest
        {
            Corner = Enum.Parse<Corner>(pad.Corner.ToString(), ignoreCase: true), Who = "prover", Repetitions = creep ? 2u : 3u, Preloads = 0, CreepTest = creep, WayDown = !creep,
        };
        request.Masses.AddRange(Enumerable.Range(1, creep ? 8 : 4).Select(i => new KnownMass { Label = $"no. {i}", Kg = creep ? 50 : 20, WeightClass = "M1" }));
        if (reach is { } kg)
            request.ReachWithBallastKg = kg;
        else
            request.Loads.AddRange(((int[])[2, 5, 8]).Select(count => new LoadStack { Masses = { request.Masses.Take(count).Select(m => m.Label) } }));
        return request;
    }

    // The cells remember while the switch is off: what goes with it is what they have crept.
    private static Dictionary<string, double> Crept(CalibrationBay bay)
    {
        bay.Run(4);
        var with = Loads(bay);
        bay.Bench.SetImperfection(Imperfection.Creep, on: false);
        bay.Run(4);
        var without = Loads(bay);
        return with.ToDictionary(pad => pad.Key, pad => pad.Value - without[pad.Key]);
    }

    private static Dictionary<string, double> Loads(CalibrationBay bay) => bay.Pads.ToDictionary(p => p.Standing.Identity!.SerialNumber, p =>
    {
        var calibration = p.Standing.Calibration!;
        return calibration.Kg(calibration.Counts([.. p.Observe()!.Reading.CellCounts]) - calibration.ZeroCounts);
    });
}
