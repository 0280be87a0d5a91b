using ScaleLink.Weighing.Calibration;
using ScaleLink.Weighing.Calibration.Masses;
using ScaleLink.Weighing.Calibration.Procedure;
using ScaleLink.Weighing.Calibration.Results;
using ScaleLink.Weighing.Pads;

namespace Weighing.Tests.Calibration.Procedure;

/// <summary>No published source: simulated pads with a known truth and one known mistake each.</summary>
public class CalibrationEvaluationTests
{
    [Fact]
    public void A_sound_calibration_procedure_finds_span_and_zero_within_their_uncertainty()
    {
        var report = CalibrationEvaluation.Evaluate(Bench.Input(Bench.Pad().Calibrate(Bench.Stacks, Bench.TrueKg)));
        Assert.Empty(report.Refusals);
        var pad = report.Calibration!;
        Assert.True(pad.IsCalibrated);
        Assert.Equal(200, pad.CalibratedToKg, 1e-9);
        var budget = pad.Budget(200);
        Assert.Equal(200, pad.Load(41_000 + 400 * 200, 41_000).Kg, budget.Expanded(0.99));
        // Creep, position and temperature are taken as usual, for a single cell at that.
        Assert.InRange(budget.Expanded(), 0.005, 0.12);
        Assert.Equal(41_000, pad.ZeroCounts, 6 * Math.Max(1, pad.ZeroUncertaintyCounts));
        Assert.Equal(GradeOutcome.Inside, report.Grade!.Outcome);
        Assert.Equal([BudgetTerms.Creep, BudgetTerms.Position, BudgetTerms.Temperature], report.TakenAsUsual);
        Assert.Empty(report.NotCovered);
    }

    [Fact]
    public void A_curved_pad_gets_a_curve_and_a_straight_one_a_line()
    {
        var pad = Bench.Pad();
        Assert.Equal(1, CalibrationEvaluation.Evaluate(Bench.Input(pad.Calibrate(Bench.Stacks, Bench.TrueKg))).Curve!.Order);
        pad.BowKg = 0.6;
        var report = CalibrationEvaluation.Evaluate(Bench.Input(pad.Calibrate(Bench.Stacks, Bench.TrueKg)));
        Assert.Equal(2, report.Curve!.Order);
        Assert.Equal(100, report.Calibration!.Kg(pad.Read(100, 0.5) - pad.Read(0)), 0.05);
    }

    [Fact]
    public void A_bow_that_the_masses_explain_is_not_put_on_the_pad()
    {
        // Plates right within 1 %: a level that is off by 0.1 kg bends the points of a straight pad.
        var masses = new MassSet([.. Enumerable.Range(1, 4).Select(i => KnownMass.Stated($"P{i}", 50, 0.5))]);
        LoadStack[] stacks = [.. Enumerable.Range(0, 5).Select(n => LoadStack.Of([.. Enumerable.Range(1, n).Select(i => $"P{i}")]))];
        double[] errors = [0.12, 0.04, -0.04, -0.12];
        var points = Bench.Pad().Calibrate(stacks, label => 50 + errors[label[1] - '1']);
        var report = CalibrationEvaluation.Evaluate(Bench.Input(points, masses));
        Assert.Equal(1, report.Curve!.Order);
        // What was left out of the curve stays in the uncertainty.
        Assert.InRange(report.Calibration!.Errors.LinearityKg!.Value, 0.05, 0.2);
    }

    [Fact]
    public void A_pad_with_reversed_cells_is_calibrated_all_the_same()
    {
        var pad = Bench.Pad();
        pad.CountsPerKg = -400;
        var report = CalibrationEvaluation.Evaluate(Bench.Input(pad.Calibrate(Bench.Stacks, Bench.TrueKg)) with
        {
            Before = PadCalibration.Starting("P1", -1 / 400.0, 0.02, 450, 1, Bench.Shop, DateTimeOffset.UnixEpoch),
        });
        Assert.Equal(200, report.Calibration!.Load(41_000 - 400 * 200, 41_000).Kg, 0.05);
    }

    [Fact]
    public void Zeros_that_wander_from_run_to_run_do_not_spoil_the_span()
    {
        List<ProcedurePoint> points = Bench.Pad().Calibrate(Bench.Stacks, Bench.TrueKg);
        points = [.. points.Select(p => p with { Counts = p.Counts + 400 * 0.5 * p.Repetition })];
        var report = CalibrationEvaluation.Evaluate(Bench.Input(points));
        Assert.Equal(200, report.Calibration!.Kg(400 * 200), 0.03);
        Assert.InRange(report.Curve!.Choice.Fit.ResidualSd, 0.005, 0.03);
    }

    [Fact]
    public void Too_little_of_the_capacity_is_refused() =>
        Refuses("SL-331", Bench.Input([.. Bench.Pad().Calibrate(Bench.Stacks[..3], Bench.TrueKg)]));

    [Fact]
    public void Too_small_a_signal_is_refused()
    {
        var pad = Bench.Pad();
        pad.CountsPerKg = 2;
        Refuses("SL-307", Bench.Input(pad.Calibrate(Bench.Stacks, Bench.TrueKg)));
    }

    [Fact]
    public void Two_loads_are_too_few() =>
        Refuses("SL-314", Bench.Input([.. Bench.Pad().Calibrate([Bench.Stacks[0], Bench.Stacks[6]], Bench.TrueKg)]));

    [Fact]
    public void Three_loads_make_a_line_and_leave_the_bow_uncertain()
    {
        var pad = Bench.Pad();
        pad.BowKg = 0.3;
        var report = CalibrationEvaluation.Evaluate(Bench.Input(pad.Calibrate([Bench.Stacks[0], Bench.Stacks[4], Bench.Stacks[6]], Bench.TrueKg)));
        Assert.Empty(report.Refusals);
        Assert.Equal(1, report.Curve!.Order);
        // Up to 200 kg of 450 the bow of 0.3 kg shows as 0.3 x (200 / 450)² = 0.06 kg.
        Assert.InRange(report.Calibration!.Errors.LinearityKg!.Value, 0.05, 0.15);
    }

    [Fact]
    public void A_repetition_without_the_empty_pad_is_refused() => Refuses("SL-314",
        Bench.Input([.. Bench.Pad().Calibrate(Bench.Stacks, Bench.TrueKg).Where(p => p.Repetition != 2 || !p.Load.IsEmpty)]));

    [Fact]
    public void A_mass_that_is_not_listed_is_refused() =>
        Refuses("SL-316", Bench.Input([new(LoadStack.Of("ghost"), 1, LoadingWay.Up, 1)]));

    [Fact]
    public void An_uncertainty_not_reached_names_what_to_work_on()
    {
        var report = Refuses("SL-315", Bench.Input(Bench.Pad().Calibrate(Bench.Stacks, Bench.TrueKg)) with { Asked = new(0.001, 200) });
        Assert.Matches("largest term (fit|repeatability|zero return|hysteresis|creep|position|temperature)", report.Refusals.Single().Message);
        Assert.Null(report.Calibration);
        Assert.NotNull(report.Curve);
    }

    [Fact]
    public void Where_more_repetitions_would_do_their_number_is_told()
    {
        var pad = Bench.Pad();
        (pad.NoiseKg, pad.HysteresisKg) = (0.2, 0);
        // A repeatability that is mostly the fit's: the pad's own terms are left out by reading each repetition up only.
        List<ProcedurePoint> Repetitions(int repetitions) => [.. pad.Calibrate(Bench.Stacks, Bench.TrueKg, repetitions).Where(p => p.Way == LoadingWay.Up)];
        var single = CalibrationEvaluation.Evaluate(Bench.Input(Repetitions(1))).Calibration!.Budget(200);
        var asked = new AskedUncertainty(0.6 * single.Expanded(), 200);
        var report = Refuses("SL-314", Bench.Input(Repetitions(1)) with { Asked = asked });
        var told = System.Text.RegularExpressions.Regex.Match(report.Refusals[0].Message, "about ([0-9]+) repetitions");
        Assert.InRange(int.Parse(told.Groups[1].Value), 2, 20);
    }

    [Fact]
    public void A_point_without_a_number_is_refused() =>
        Refuses("SL-303", Bench.Input([.. Bench.Pad().Calibrate(Bench.Stacks, Bench.TrueKg).Append(new(Bench.Stacks[1], 3, LoadingWay.Up, double.NaN))]));

    [Fact]
    public void A_platform_that_touches_its_frame_is_refused()
    {
        // From 120 kg on a third of what is added goes past the cells.
        var points = Bench.Pad().Calibrate(Bench.Stacks, Bench.TrueKg).Select(p =>
        {
            var kg = Bench.Masses.Kg(p.Load);
            return p with { Counts = p.Counts - (kg > 120 ? 400 * (kg - 120) / 3 : 0) };
        });
        Assert.Contains(CalibrationEvaluation.Evaluate(Bench.Input([.. points])).Refusals, r => r.Code.Text is "SL-330" or "SL-328");
    }

    static ProcedureReport Refuses(string code, ProcedureInput input)
    {
        var report = CalibrationEvaluation.Evaluate(input);
        Assert.Equal(code, Assert.Single(report.Refusals).Code);
        Assert.Null(report.Calibration);
        return report;
    }
}
