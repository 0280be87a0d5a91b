using CarOnPads.Bench;
using CarOnPads.Cells;
using CarOnPads.Physics;
using Daemon.Tests.Workflows.Calibration;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Workflows.SiteCheck;
using ScaleLink.Measure;
using ScaleLink.Weighing.Levelling;
using ScaleLink.Weighing.Levelling.Files;
using ScaleLink.Weighing.SiteCheck;

namespace Daemon.Tests.Workflows.SiteCheck;

/// <summary>
/// Empty pads watched through the whole pipeline in virtual time. What the sun does to them is the simulator's own physics: metal that
/// follows with ten minutes, cells with a zero coefficient each.
/// </summary>
public sealed class SiteCheckDeskTests : IDisposable
{
    private readonly CalibrationBay _bay = new(new BayOptions
    {
        Hertz = 20, Seed = 12, Raised = true,
        Imperfections = Imperfections.Parse("temperature,noise,offset,dead-load,thermometer-noise,tilt-noise,clock-offset,clock-drift,latency-batches"),
    }, weighs: true);

    public void Dispose() => _bay.Dispose();

    [Fact]
    public void A_known_coefficient_times_a_known_warming_comes_out_as_the_drift_and_shade_is_the_remedy()
    {
        var desk = Zeroed();
        var worst = Enum.GetValues<Wheel>().MaxBy(w => Math.Abs(Sunny(w).ZeroPerKelvin));
        var corner = (Corner)(int)worst;
        Sunny(worst).Sun(25);
        desk.Start(2, 1048, "crew");
        _bay.Run(1);
        var before = Sunny(worst).TemperatureCelsius;
        _bay.Run(30);
        Assert.NotNull(desk.State.Now!.SoFar);
        Assert.InRange(desk.State.Now.Seconds, 29, 32);
        var noted = Sunny(worst).TemperatureCelsius;
        Assert.True(noted > before);
        _bay.Run(92);

        Assert.Null(desk.State.Now);
        var last = desk.State.Last!;
        Assert.Equal((SiteCheckEnding.Whole, "crew", null), (last.Ending, last.Who, last.Why));
        var pad = last.Report!.Pads[(int)corner];
        // Kelvin times kilograms a kelvin, from 20 degrees, where the metal began.
        var warmed = Sunny(worst).TemperatureCelsius - before;
        var drift = warmed * Sunny(worst).ZeroPerKelvin / 2 * 10;
        Assert.InRange(warmed, 3.5, 5.5);
        Assert.Equal(warmed, pad.WarmedK!.Value, 0.5);
        Assert.InRange(drift - pad.DriftKgPer10Min.Estimate, -Within(pad), Within(pad));
        Assert.Equal(Sunny(worst).ZeroPerKelvin, pad.KgPerKelvin!.Value, 0.01);
        Assert.Contains(last.Report.Findings, f => f.Code == SiteCheckCodes.TemperatureUnlike && f.Remedy.ToString().Contains($"shade {corner}", StringComparison.Ordinal));
        // The rest stood in the shade: their zeros are told to be quiet within what is said.
        foreach (var other in last.Report.Pads.Where(p => p.Corner != corner))
            Assert.InRange(other.DriftKgPer10Min.Estimate, -Within(other), Within(other));
        // Not measured, no car: one reading is not claimed, comparing is.
        Assert.Equal((SiteCheckVerdict.Compare, null), (last.Report.Verdict, last.Report.ReadingPercent));

        // As after a restart.
        var again = _bay.TakeUpSiteCheck().State.Last!;
        Assert.Equal(last.Report.Statement, again.Report!.Statement);
        Assert.Equal(last.Report.Parts, again.Report.Parts);
        Assert.Equal(last.Report.Drift, again.Report.Drift);
        Assert.Equal(SiteCheckEnding.Whole, again.Ending);
    }

    [Fact]
    public void Pads_that_are_not_live_not_zeroed_or_not_empty_are_not_watched()
    {
        var desk = _bay.TakeUpSiteCheck();
        Assert.All(Refused(desk), f => Assert.Equal(SiteCheckCodes.PadNotLive, f.Code));
        _bay.Run(6);
        Assert.Equal(4, Refused(desk).Count(f => f.Code == SiteCheckCodes.PadUnzeroed));
        _bay.Zero();
        _bay.Bench.PutMass(Wheel.RR, 20, 0, 0, atOnce: true);
        _bay.Run(1);
        var refused = Assert.Single(Refused(desk));
        Assert.Equal(SiteCheckCodes.PadLoaded, refused.Code);
        Assert.StartsWith("RR reads +20", refused.Message);
        Assert.Equal(SiteCheckCodes.NoWatch, Assert.Throws<StepRefusedException>(() => desk.Stop("crew")).Diagnostic.Code);
        Assert.Equal((null, null), (desk.State.Now, desk.State.Last));
    }

    [Fact]
    public void A_step_on_a_pad_is_told_and_a_car_ends_the_watch_with_what_was_seen()
    {
        var desk = Zeroed();
        desk.Start(2, null, "crew");
        Assert.Equal(SiteCheckCodes.UnderWay, Assert.Single(Refused(desk)).Code);
        _bay.Run(20);
        Put(70, Wheel.RF);
        _bay.Run(4);
        Put(0, Wheel.RF);
        _bay.Run(30);
        Assert.NotNull(desk.State.Now);
        Put(250, Enum.GetValues<Wheel>());
        _bay.Run(4);
        var last = desk.State.Last!;
        Assert.Equal((SiteCheckEnding.Loaded, SiteCheckCodes.EndedEarly), (last.Ending, last.Why!.Code));
        Assert.InRange(last.Report!.Seconds, 45, 54);
        var touch = Assert.Single(last.Report.Findings, f => f.Code == SiteCheckCodes.PadTouched);
        Assert.Contains("RF, +70", touch.Message);
        Assert.DoesNotContain(last.Report.Pads, p => p.Corner != Corner.RF && p.Touches.Count > 0);
        Assert.Equal((1000, true), (last.TotalKg, last.TotalIsGuessed));
    }

    [Fact]
    public void A_pad_that_falls_out_ends_it_and_a_daemon_that_was_killed_says_so()
    {
        var desk = Zeroed();
        desk.Start(10, null, "crew");
        _bay.Run(20);
        // Nobody told it that it would end.
        var after = _bay.TakeUpSiteCheck();
        Assert.Equal((SiteCheckEnding.Restarted, SiteCheckCodes.EndedEarly, null), (after.State.Last!.Ending, after.State.Last.Why!.Code, after.State.Last.Report));
        Assert.Contains("the daemon was ended", after.State.Last.Why.Message);

        after.Start(10, null, "crew");
        _bay.Run(20);
        Sunny(Wheel.LR).Faults.Frozen = true;
        _bay.Run(14);
        var last = after.State.Last!;
        Assert.Equal(SiteCheckEnding.PadLost, last.Ending);
        Assert.Contains("LR", last.Why!.Message);
        Assert.Equal(4, last.Report!.Pads.Count);
        // What its calibration left uncertain is not forgotten with it: 1 % of a quarter of the car, the square root of four pads at a twentieth of a percent a kilogram each.
        Assert.Equal(2 * 2 * 2.5 * 0.05, last.Report.Parts.First(p => p.Kind == SiteCheckPartKind.Calibration).ReadingPercent!.Value, 0.01);
    }

    [Fact]
    public void A_daemon_that_ends_in_order_keeps_what_was_seen()
    {
        var desk = Zeroed();
        desk.Start(2, 900, "crew");
        _bay.Run(25);
        desk.Close();
        var last = _bay.TakeUpSiteCheck().State.Last!;
        Assert.Equal((SiteCheckEnding.Restarted, 900, 4), (last.Ending, last.TotalKg, last.Report!.Pads.Count));
    }

    [Fact]
    public void A_height_measurement_and_a_car_make_a_reading_worth_believing()
    {
        ScaleLink.Daemon.Workflows.Levelling.PatchDesk? levelling = null;
        var desk = Zeroed((patch, cars) =>
        {
            levelling = patch;
            cars.Use(cars.Save(Workflows.WorkSessions.Bench.CarText, "crew"), "crew");
            patch.Save(new HeightMeasurementInput { HeightsMm = new Corners(1, -1, -1, 1), HeightUncertaintiesMm = Corners.Same(0.2) }, "crew");
        });
        desk.Start(2, 1048, "crew");
        _bay.Run(25);
        desk.Stop("crew");
        var report = desk.State.Last!.Report!;
        Assert.Equal(SiteCheckEnding.Stopped, desk.State.Last.Ending);
        // Nominal sensitivity of 1 % first, or the warp: whichever moves cross weight more is named first, and the sum of all is no less than the largest.
        Assert.InRange(report.ReadingPercent!.Value, report.Parts[0].ReadingPercent!.Value, report.Parts.Sum(p => p.ReadingPercent!.Value));
        Assert.True(report.Parts.First(p => p.Kind == SiteCheckPartKind.Warp).ReadingPercent > 0.3);
        Assert.Contains("not calibrated: LF, RF, LR, RR", report.Parts.First(p => p.Kind == SiteCheckPartKind.Calibration).Words);
        Assert.Contains(report.Findings, f => f.Code == SiteCheckCodes.PatchUncorrected);

        // The crew takes the warp out: what was seen stays, what it comes to is told anew, and kept.
        levelling!.Set(CorrectionKind.Warp, true, "crew");
        _bay.Run(0.3);
        var corrected = _bay.TakeUpSiteCheck().State.Last!;
        Assert.Equal(SiteCheckEnding.Stopped, corrected.Ending);
        Assert.True(corrected.Report!.ReadingPercent < 0.7 * report.ReadingPercent);
        Assert.Equal(report.Pads.Select(p => p.DriftKgPer10Min), corrected.Report.Pads.Select(p => p.DriftKgPer10Min));
        Assert.DoesNotContain(corrected.Report.Findings, f => f.Code == SiteCheckCodes.PatchUncorrected);
    }

    private static double Within(PadOutcome pad) => pad.DriftKgPer10Min.HalfWidth() + 2 * pad.BendKgPer10Min;

    private CarOnPads.Pads.Pad Sunny(Wheel wheel) => _bay.Bench.Pad(wheel);

    private void Put(double kg, params ReadOnlySpan<Wheel> wheels)
    {
        foreach (var wheel in wheels)
            _bay.Bench.PutMass(wheel, kg, 0, 0, atOnce: true);
    }

    private static IReadOnlyList<ScaleLink.Measure.Diagnostics.Diagnostic> Refused(SiteCheckDesk desk) => Assert.Throws<StepRefusedException>(() => desk.Start(2, null, "crew")).Diagnostics;

    private SiteCheckDesk Zeroed(Action<ScaleLink.Daemon.Workflows.Levelling.PatchDesk, ScaleLink.Daemon.Workflows.Cars.CarShelf>? prepare = null)
    {
        _bay.Run(6);
        _bay.Zero();
        return _bay.TakeUpSiteCheck(prepare);
    }
}
