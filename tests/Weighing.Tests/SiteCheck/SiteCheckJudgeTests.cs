using ScaleLink.Measure;
using ScaleLink.Weighing.Levelling;
using ScaleLink.Weighing.SiteCheck;
using ScaleLink.Weighing.Statics;
using Weighing.Tests.Cars;

namespace Weighing.Tests.SiteCheck;

/// <summary>What is said of a place. Figures worked by hand from the statics of the documents' car; limits are common practice, no published source.</summary>
public class SiteCheckJudgeTests
{
    static readonly CarStatics Car = new(Heron.Car, Heron.TotalKg);

    static SiteCheckQuestion Asked(int seed, MeasuredHeights? heightMeasurement, params WatchedPad[] special) =>
        new(Watched.Four(new Random(seed), special), Heron.Loads) { Car = Car, HeightMeasurement = heightMeasurement };

    static MeasuredHeights Heights(Corners mm) => MeasuredHeights.FromHeights(mm, Corners.Same(0.1));

    static SiteCheckPart Part(SiteCheckReport report, SiteCheckPartKind kind) => report.Parts.First(p => p.Kind == kind);

    [Fact]
    public void A_flat_quiet_place_is_one_to_weigh_on()
    {
        var report = SiteCheckJudge.Judge(Asked(1, Heights(default)));
        Assert.Equal(SiteCheckVerdict.Weigh, report.Verdict);
        Assert.InRange(report.ReadingPercent!.Value, 0.01, 0.2);
        Assert.InRange(report.ChangePercent!.Value, 0, 0.05);
        Assert.Equal(60, report.ZeroEveryMinutes);
        Assert.Empty(report.Findings);
        Assert.Equal(Enum.GetValues<SiteCheckPartKind>().Order(), report.Parts.Select(p => p.Kind).Order());
        Assert.All(report.Parts, p => Assert.True(!p.Words.IsEmpty && p.Remedy.EndsWith('.')));
    }

    [Fact]
    public void Warp_that_is_left_in_comes_first_and_moves_no_change()
    {
        var warp = new Corners(1, -1, -1, 1);
        var report = SiteCheckJudge.Judge(Asked(2, Heights(warp)));
        var expected = PatchEffect.Of(Car, warp);
        Assert.Equal(SiteCheckVerdict.Compare, report.Verdict);
        Assert.Equal(SiteCheckPartKind.Warp, report.Parts[0].Kind);
        // Not corrected: all of what the statics says, and its uncertainty on top.
        Assert.InRange(report.Parts[0].ReadingPercent!.Value, Math.Abs(expected.CrossWeightPercent), 1.3 * Math.Abs(expected.CrossWeightPercent));
        Assert.Equal(0, report.Parts[0].ChangePercent);
        Assert.Contains("scalelink patch shims", report.Parts[0].Remedy);
        Assert.Equal(SiteCheckCodes.PatchUncorrected, Assert.Single(report.Findings).Code);

        var corrected = SiteCheckJudge.Judge(Asked(2, Heights(warp)) with { On = [CorrectionKind.Warp] });
        Assert.True(Part(corrected, SiteCheckPartKind.Warp).ReadingPercent < 0.2 * report.Parts[0].ReadingPercent);
        Assert.Equal(SiteCheckVerdict.Weigh, corrected.Verdict);
    }

    [Fact]
    public void Slope_is_as_large_as_height_of_the_centre_of_gravity_times_its_tangent_over_the_track()
    {
        // 12 mm over the track, left side high: W h tan(angle) over the track goes to the right, by moments about one side; closed form for a body that leans about its own
        // centre of gravity, as in the patch tests. Front and rear take it by their rates, so cross weight moves by the difference only.
        var side = new Corners(6, -6, 6, -6);
        var rigid = new CarStatics(Heron.Car with { RollAxisHeightMm = Heron.Car.CgHeightMm }, Heron.TotalKg);
        var report = SiteCheckJudge.Judge(Asked(3, Heights(side)) with { Car = rigid });
        var moved = rigid.FromSlope(side);
        Assert.Equal(-Heron.TotalKg * 430 * 12 / 1490 / 1490, moved.LF + moved.LR, 0.1);
        Assert.InRange(Part(report, SiteCheckPartKind.Slope).ReadingPercent!.Value - Math.Abs(100 * ((moved.RF + moved.LR) / Heron.TotalKg)), 0, 0.05);
    }

    [Theory]
    [InlineData(0.01)]
    [InlineData(0.2887)]
    public void A_lean_is_as_uncertain_as_the_zero_of_its_inclinometer(double uncertaintyDeg)
    {
        // JCGM 100:2008 (GUM) 5.1.2: F u sqrt(tilt^2 + 2 u^2) for each pad, angles in radians, by the derivative of (RF + LR) / total; 95 % is twice that (6.3.3).
        var random = new Random(5);
        var pads = Corners.All.ToArray().Select(c => Watched.Pad(c, random, celsius: _ => 20, pitch: _ => c == Corner.RF ? 1 : 0) with { TiltIsCorrected = true, TiltUncertaintyDeg = uncertaintyDeg }).ToArray();
        var part = Part(SiteCheckJudge.Judge(Asked(5, Heights(default), pads)), SiteCheckPartKind.Tilt);
        var (u, cross) = (uncertaintyDeg * Math.PI / 180, (Heron.Loads.RF + Heron.Loads.LR) / Heron.TotalKg);
        var parts = Corners.From(c => (c is Corner.RF or Corner.LR ? 1 - cross : -cross) / Heron.TotalKg * Heron.Loads[c] * u * Math.Sqrt((c == Corner.RF ? Math.Pow(Math.PI / 180, 2) : 0) + 2 * u * u));
        Assert.Equal(200 * Math.Sqrt(parts.Dot(parts)), part.ReadingPercent!.Value, 2e-3 * uncertaintyDeg);
        Assert.Equal(uncertaintyDeg > 0.1, part.Remedy.Contains("scalelink patch inclinometer-zero"));
    }

    [Fact]
    public void Sun_on_one_pad_is_told_with_its_drift_and_the_shade_that_remedies_it()
    {
        var random = new Random(4);
        // 0.06 kg/K and 8 K of sun by an exponential of ten minutes, of which 63 % are seen.
        static double Warm(double t) => 8 * (1 - Math.Exp(-t / 600));
        var report = SiteCheckJudge.Judge(Asked(4, Heights(default), Watched.Pad(Corner.RF, random, t => 0.06 * Warm(t), celsius: t => 20 + Warm(t), pitch: _ => 0)));
        var pad = report.Pads[1];
        Assert.Equal(0.06, pad.KgPerKelvin!.Value, 0.006);
        Assert.Equal(5.06, pad.UnlikeK!.Value, 0.5);
        Assert.Equal([SiteCheckCodes.ZeroDrifts, SiteCheckCodes.TemperatureUnlike], report.Findings.Select(f => f.Code));
        Assert.Contains("shade RF", report.Findings.First(f => f.Code == SiteCheckCodes.TemperatureUnlike).Remedy);
        Assert.Contains("Shade RF", Part(report, SiteCheckPartKind.Drift).Remedy);
        // RF alone: half of a kilogram a hundredth of the total, (RF + LR) 52 % of it.
        Assert.Equal(pad.DriftKgPer10Min.Estimate * (100 - 52.0) / Heron.TotalKg, report.Drift.CrossWeightPercent.Estimate, 0.002);
        Assert.Equal(pad.DriftKgPer10Min.Estimate, report.Drift.RightKg.Estimate, 0.03);
    }

    [Fact]
    public void A_zero_that_runs_away_has_to_be_taken_again_more_often_and_at_last_forbids_the_comparing()
    {
        SiteCheckReport Drifting(double kgPer10Min) =>
            SiteCheckJudge.Judge(Asked(5, Heights(default), Watched.Pad(Corner.LR, new Random(6), t => kgPer10Min * t / 600, celsius: _ => 20, pitch: _ => 0)));

        Assert.Equal(60, Drifting(0.1).ZeroEveryMinutes);
        Assert.Equal(10, Drifting(0.8).ZeroEveryMinutes);
        Assert.Equal(SiteCheckVerdict.Remedy, Drifting(12).Verdict);
        Assert.Equal(SiteCheckPartKind.Drift, Drifting(12).Parts[0].Kind);
    }

    [Fact]
    public void Without_height_measurement_or_car_nothing_is_claimed_of_one_reading_and_a_change_still_is()
    {
        var report = SiteCheckJudge.Judge(Asked(7, null));
        Assert.Equal((SiteCheckVerdict.Compare, null), (report.Verdict, report.ReadingPercent));
        Assert.Null(report.Parts[0].ReadingPercent);
        Assert.NotNull(report.ChangePercent);
        Assert.Contains("not measured", Part(report, SiteCheckPartKind.Warp).Words);
        Assert.Contains("a single reading is not known: the heights of the pads were not measured", report.Statement);
        Assert.Contains("which car", Part(SiteCheckJudge.Judge(Asked(7, Heights(default)) with { Car = null }), SiteCheckPartKind.Slope).Words);
    }

    [Fact]
    public void Ground_that_gives_way_is_seen_by_the_tilt_and_takes_from_both_figures()
    {
        var random = new Random(8);
        var report = SiteCheckJudge.Judge(Asked(8, Heights(default), Watched.Pad(Corner.RF, random, celsius: _ => 20, pitch: t => 0.5 * t / 600)));
        Assert.Equal(0.5, report.Pads[1].TiltChangeDeg!.Value, 0.02);
        Assert.Contains("RF on a board", report.Findings.Single(f => f.Code == SiteCheckCodes.GroundMoves).Remedy);
        // Half a degree at 250 mm is 2.2 mm, rectangular: 1.26 mm standard.
        var effect = PatchEffect.Of(Car, new(0, 250 * Math.Tan(0.5 * Math.PI / 180) / Math.Sqrt(3), 0, 0));
        Assert.Equal(2 * Math.Abs(effect.CrossWeightPercent), Part(report, SiteCheckPartKind.Ground).ChangePercent!.Value, 0.05);
        Assert.Equal(SiteCheckVerdict.Remedy, report.Verdict);
    }

    [Fact]
    public void A_pad_far_from_the_temperature_of_its_calibration_procedure_is_told()
    {
        var random = new Random(9);
        var report = SiteCheckJudge.Judge(Asked(9, Heights(default), Watched.Pad(Corner.LF, random, celsius: _ => 38, pitch: _ => 0)));
        Assert.Equal([SiteCheckCodes.TemperatureUnlike, SiteCheckCodes.FarFromCalibration], report.Findings.Select(f => f.Code));
        // 2e-5 of 268 kg for each of 18 K, rectangular.
        var own = 2e-5 * 18 * 268 / Math.Sqrt(3) * 52 / Heron.TotalKg;
        Assert.Equal(2 * own, Part(report, SiteCheckPartKind.Temperature).ReadingPercent!.Value, 0.001);
    }

    [Fact]
    public void Too_little_seen_and_numbers_that_are_none_are_refused_by_their_codes()
    {
        var random = new Random(10);
        var brief = new SiteCheckQuestion([.. Corners.All.ToArray().Select(c => Watched.Pad(c, random, seconds: 6))], Heron.Loads);
        Assert.Equal(SiteCheckCodes.TooShort, Refused(brief));
        Assert.Equal(SiteCheckCodes.InputUnusable, Refused(Asked(10, null) with { LoadsKg = new(1, 2, double.NaN, 4) }));
        Assert.Equal(SiteCheckCodes.InputUnusable, Refused(Asked(10, null) with { WantedPercent = 0 }));
    }

    static string Refused(SiteCheckQuestion asked) => Assert.Throws<DiagnosticException>(() => SiteCheckJudge.Judge(asked)).Diagnostics[0].Code;
}
