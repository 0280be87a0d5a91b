using ScaleLink.Measure;
using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Statics;
using ScaleLink.Weighing.WorkSessions.Learning;
using Weighing.Tests.Cars;

namespace Weighing.Tests.WorkSessions.Learning;

public class StepLearnerTests
{
    static readonly Corners Step = new(1.5, -1.5, -1.5, 1.5);
    static readonly CornerMatrix Noise = CornerMatrix.Diagonal(Corners.Same(0.01));

    static CarModel Uncertain { get; } = Heron.Car with { SharedSpringUncertainty = 0.15, SharedTyreUncertainty = 0.15 };

    static CarStatics Believed => new(Uncertain, Heron.TotalKg);

    // Springs a quarter stiffer than anybody said.
    static CarStatics Truth
    {
        get
        {
            var car = Heron.Car;
            foreach (var corner in Corners.All)
                car = car.Change(corner, s => s with { SpringRateNPerMm = Stated.Exactly(1.25 * s.SpringRateNPerMm.Estimate) });
            return new(car, Heron.TotalKg);
        }
    }

    static LoadSummary Weigh(Corners turns) => new(Heron.Loads + Truth.FromTurns(turns), Noise);

    [Fact]
    public void One_step_teaches_what_the_next_will_do()
    {
        var start = StepLearner.Start(Believed, Weigh(default));
        var (check, next) = start.Record(new(Step, Weigh(Step)));

        var truth = Weigh(2 * Step).CrossWeightPercent.Estimate;
        Assert.True(check.Agrees);
        Assert.True(Math.Abs(next.NextReading(Step).Estimate - truth) < Math.Abs(start.NextReading(2 * Step).Estimate - truth) / 4);
        Assert.True(next.NextReading(Step).StandardUncertainty < 0.7 * start.NextReading(2 * Step).StandardUncertainty);
    }

    [Fact]
    public void What_is_learned_at_two_corners_helps_the_others_and_the_heights()
    {
        var front = new Corners(2, -2, 0, 0);
        var rear = new Corners(0, 0, 2, -2);
        var start = StepLearner.Start(Believed, Weigh(default));
        var (_, next) = start.Record(new(front, Weigh(front)));

        var truth = Truth.FromTurns(rear).RF;
        Assert.True(Math.Abs((next.Effects.LoadsPerTurn * rear).RF - truth) < 0.5 * Math.Abs((start.Effects.LoadsPerTurn * rear).RF - truth));
        var (before, after) = (start.Effects.Forecast(rear), next.Effects.Forecast(rear));
        Assert.True(after.HeightCovariance.DiagonalPart.Sum < before.HeightCovariance.DiagonalPart.Sum);
    }

    [Fact]
    public void The_update_is_the_textbook_conditional_of_a_normal()
    {
        // Derived: for start c ~ N(y0, s²) and effect e ~ N(m, u²) with reading y1 = c + e + N(0, s²),
        // e given y1 has mean m + u²/(u² + 2 s²) (y1 - y0 - m) and variance u² - u⁴/(u² + 2 s²).
        var start = StepLearner.Start(Believed, new LoadSummary(Heron.Loads, default), settleRepeatabilityPercent: 0.2);
        var noEffect = start.NextReading(default);
        var planned = start.NextReading(Step);
        double s2 = 0.04, u2 = Square(planned.Uncertainty) - 2 * s2, m = planned.Estimate - noEffect.Estimate;
        var shifted = new LoadSummary(Heron.Loads + 1.1 * Believed.FromTurns(Step), default);
        var surprise = shifted.CrossWeightPercent.Estimate - planned.Estimate;

        var (_, next) = start.Record(new(Step, shifted));

        var effect = 100 / Heron.TotalKg * (next.Effects.LoadsPerTurn * Step is var l ? l.RF + l.LR : 0);
        Assert.Equal(0.2 * Math.Sqrt(2), noEffect.Uncertainty, 9);
        Assert.Equal(m + u2 / (u2 + 2 * s2) * surprise, effect, 9);
        var spread = next.Effects.Forecast(Step).LoadCovariance.VarianceOf(100 / Heron.TotalKg * new Corners(0, 1, 1, 0));
        Assert.Equal(u2 - u2 * u2 / (u2 + 2 * s2), spread, 9);
    }

    [Fact]
    public void Repeated_settling_without_turns_averages()
    {
        var known = StepLearner.Start(Believed, new LoadSummary(Heron.Loads, default));
        for (var i = 0; i < 3; i++)
            (_, known) = known.Record(new(default, new LoadSummary(Heron.Loads, default)));

        Assert.Equal(0.1 / 2, known.CrossWeightPercent.Uncertainty, 9);
    }

    [Fact]
    public void Of_a_step_weighed_too_early_only_the_turns_count()
    {
        var start = StepLearner.Start(Believed, Weigh(default));

        var (_, early) = start.Record(new(Step, Weigh(0.4 * Step), Settled: false));
        var (_, settled) = early.Record(new(default, Weigh(Step)));
        var (_, direct) = start.Record(new(Step, Weigh(Step)));

        Assert.Equal(start.NextReading(Step).Estimate, early.CrossWeightPercent.Estimate, 1e-9);
        Assert.Equal(start.Effects.LoadsPerTurn, early.Effects.LoadsPerTurn);
        Assert.Equal(direct.NextReading(Step).Estimate, settled.NextReading(Step).Estimate, 0.01);
    }

    [Fact]
    public void A_restart_keeps_what_was_learned_about_the_perches()
    {
        var (_, known) = StepLearner.Start(Believed, Weigh(default)).Record(new(Step, Weigh(Step)));
        var reading = new LoadSummary(Heron.Loads + new Corners(3, 3, -3, -3), Noise);

        var again = known.Restart(reading);

        Assert.Equal(known.Effects.LoadsPerTurn, again.Effects.LoadsPerTurn);
        Assert.Equal(reading.CrossWeightPercent.Estimate, again.CrossWeightPercent.Estimate, 1e-9);
        Assert.Equal(Step, again.TurnsInSession);
    }

    [Fact]
    public void Thread_used_is_thread_gone()
    {
        var (_, known) = StepLearner.Start(Believed, Weigh(default)).Record(new(Step, Weigh(Step)));

        Assert.Equal(8 - 1.5, known.CarNow.Suspension.LF.Perch.UpTurnsLeft, 12);
        Assert.Equal(8 + 1.5, known.CarNow.Suspension.RF.Perch.UpTurnsLeft, 12);
    }

    [Fact]
    public void A_turn_of_a_fixed_perch_or_no_number_is_refused()
    {
        var car = Uncertain.Change(Corner.RR, s => s with { Perch = s.Perch with { CanTurn = false } });
        var known = StepLearner.Start(new CarStatics(car, Heron.TotalKg), Weigh(default));

        Assert.Equal(SessionCodes.StepUnusable, Assert.Throws<DiagnosticException>(() => known.Record(new(Step, Weigh(default)))).Diagnostics[0].Code);
        Assert.Equal(SessionCodes.StepUnusable, Assert.Throws<DiagnosticException>(() => known.Record(new(new(double.NaN, 0, 0, 0), Weigh(default)))).Diagnostics[0].Code);
        Assert.Equal(SessionCodes.StepUnusable, Assert.Throws<DiagnosticException>(() => StepLearner.Start(Believed, Weigh(default), 0)).Diagnostics[0].Code);
    }

    static double Square(double value) => value * value;
}
