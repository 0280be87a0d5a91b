using CarOnPads.Bench;
using CarOnPads.Cells;
using ScaleLink.Daemon.Workflows.Zeros;
using ScaleLink.Weighing.Calibration.Flow;
using ScaleLink.Weighing.Calibration.Masses;
using ScaleLink.Weighing.Calibration.Procedure;

namespace Daemon.Tests.Workflows.Calibration;

/// <summary>
/// A pad that is not what it was at its last calibration procedure, or at the last visit of the car, is noticed and named by the daemon. The truth is
/// what was done to the simulator; no published source.
/// </summary>
public class ShiftTests(ITestOutputHelper output)
{
    private static readonly MassSet Set = new([.. Enumerable.Range(1, 6).Select(i => KnownMass.OfClass($"50 no. {i}", 50, WeightClass.M1))]);

    [Fact]
    public void A_calibration_procedure_names_the_span_and_the_zero_that_have_moved_since_the_last_one_and_leaves_a_sound_pad_alone()
    {
        using var bay = Start("noise,quantisation,dead-load,offset");
        Assert.All(Calibrate(bay), report => Assert.Empty(report.Shifts));
        Assert.All(Calibrate(bay), report => Assert.Empty(report.Shifts));

        // Every pad by its own part of 0.4 %, as after an overload; and a bolt lost with 6.4 kg of platform.
        bay.Bench.SetImperfection(Imperfection.Span, on: true);
        bay.Bench.SetImperfection(Imperfection.DeadLoad, on: false);
        var shifts = Calibrate(bay).Select(report => report.Shifts).ToList();
        foreach (var shift in shifts.SelectMany(s => s))
            output.WriteLine(shift.Finding.Message);
        Assert.All(shifts, s => Assert.Equal(-6.4, s.Single(shift => shift.What == "zero").Kg, 0.1));
        Assert.All(shifts.SelectMany(s => s), s => Assert.Equal("SL-327", s.Finding.Code));
        Assert.Contains(shifts, s => s.Any(shift => shift.What == "span" && Math.Abs(shift.Kg) > shift.ExpandedKg));
    }

    [Fact]
    public void A_zero_that_stands_far_from_the_calibration_procedure_is_named_when_it_is_taken()
    {
        using var bay = Start("noise,quantisation,dead-load,offset");
        Calibrate(bay);
        bay.Zero();
        Assert.All(bay.Pads, pad => Assert.DoesNotContain(pad.Snapshot().Faults, f => f.Code == "SL-347"));
        bay.Bench.SetImperfection(Imperfection.DeadLoad, on: false);
        bay.Zero();
        Assert.All(bay.Pads, pad => Assert.Contains("-6.4 kg from where it stood at its calibration procedure", pad.Snapshot().Faults.Single(f => f.Code == "SL-347").Message));
    }

    [Fact]
    public void What_the_car_leaves_on_an_empty_pad_is_named_after_its_visit_and_forgotten_after_the_next_zero()
    {
        using var bay = Start("noise,quantisation");
        var (pad, watch) = (bay.Pads[2], bay.Watch(bay.Pads[2]));
        Visit(bay, watch, leavesKg: 0);
        Assert.DoesNotContain(pad.Snapshot().Faults, f => f.Code == "SL-348");
        Visit(bay, watch, leavesKg: 0.6);
        Assert.Matches(@"\+0\.(5|6)\d kg", pad.Snapshot().Faults.Single(f => f.Code == "SL-348").Message);
        bay.Zero();
        Assert.DoesNotContain(pad.Snapshot().Faults, f => f.Code == "SL-348");
    }

    private static void Visit(CalibrationBay bay, PadZeroWatch watch, double leavesKg)
    {
        bay.Put(260);
        watch.Look();
        bay.Put(leavesKg);
        for (var second = 0; second < 5; second++)
        {
            watch.Look();
            bay.Run(1);
        }
    }

    private static CalibrationBay Start(string imperfections)
    {
        var bay = new CalibrationBay(new BayOptions { Seed = 11, Hertz = 80, Raised = true, Imperfections = Imperfections.Parse(imperfections) });
        bay.Run(3);
        bay.Zero();
        return bay;
    }

    private static List<ProcedureReport> Calibrate(CalibrationBay bay)
    {
        List<ProcedureReport> reports = [];
        bay.Calibrate(pad => new ProcedurePlan
        {
            Before = pad.Standing.Calibration!, Corner = pad.Corner, Masses = Set, Place = CalibrationBay.Here, Preloads = 0, Repetitions = 2, WayDown = false,
            Loads = [.. ((int[])[1, 3, 6]).Select(count => LoadStack.Of([.. Set.Masses.Take(count).Select(m => m.Label)]))],
        }, (_, report) => reports.Add(report));
        Assert.All(reports, report => Assert.Empty(report.Refusals));
        return reports;
    }
}
