using ScaleLink.Weighing.Calibration.Flow;
using ScaleLink.Weighing.Calibration.Masses;
using ScaleLink.Weighing.Calibration.Procedure;
using ScaleLink.Weighing.Pads;
using ScaleLink.Weighing.Statistics;
using Weighing.Tests.Calibration.Coverage;

namespace Weighing.Tests.Calibration.Flow;

/// <summary>What a plan costs is counted by hand here; what it brings is held against procedures that are then read on a simulated pad.</summary>
public class PlanForecastTests(ITestOutputHelper output)
{
    static readonly MassSet Fifties = new([.. Enumerable.Range(1, 8).Select(i => KnownMass.OfClass($"50 no. {i}", 50, WeightClass.M1))]);

    [Fact]
    public void Lifts_are_counted_on_and_off()
    {
        // One preload of 8 masses on and off, one repetition of 8 on and 8 off: 32 lifts of 50 kg, in 1 + 2 + 1 + 3 + 3 steps.
        var forecast = PlanForecast.Of(Brief);
        Assert.Equal((10, 32, 1600.0), (forecast.Steps, forecast.Effort.Lifts, forecast.Effort.Kg));
        // Three preloads and three repetitions: six times on and off.
        Assert.Equal((40, 96, 4800.0), (PlanForecast.Of(Full).Steps, PlanForecast.Of(Full).Effort.Lifts, PlanForecast.Of(Full).Effort.Kg));
    }

    [Fact]
    public void The_way_down_that_is_left_out_still_comes_off_and_a_load_that_is_moved_is_lifted()
    {
        // Up only: on in three parts, off as a whole at the end. A mass of 50 kg over the one cell and in the middle: on, moved, off.
        Assert.Equal(new PlanEffort(16, 800), PlanForecast.Of(Brief with { Preloads = 0, WayDown = false, Repetitions = 1, Loads = LoadChoice.Of(Fifties, 450, 5) }).Effort);
        Assert.Equal(new PlanEffort(16 + 3, 800 + 150), PlanForecast.Of(Brief with { Preloads = 0, CornerLoad = LoadStack.Of("50 no. 1") }).Effort);
    }

    [Fact]
    public void What_is_left_to_lift_shrinks_to_nothing()
    {
        var walk = new ProcedureWalk();
        var left = walk.Flow.EffortLeft;
        Assert.Equal(PlanForecast.Of(ProcedureWalk.Plan).Effort, left);
        while (walk.Flow.Next is not null)
        {
            walk.Offer(walk.Read());
            Assert.True(walk.Flow.EffortLeft.Lifts <= left.Lifts);
            left = walk.Flow.EffortLeft;
        }

        // The load of the creep test stands there still.
        Assert.Equal(6, left.Lifts);
    }

    [Theory, InlineData(true), InlineData(false)]
    public void What_is_foreseen_is_what_the_result_says_of_a_pad_that_is_as_usual(bool isShort)
    {
        var plan = isShort ? Brief : Full;
        var forecast = PlanForecast.Of(plan);
        List<double> came = [];
        for (var seed = 1; seed <= 60; seed++)
        {
            var pad = new SimulatedPad(new Random(seed)) { NoiseKg = 0.005, PlacingKg = TypeB.Rectangular(UsualErrors.PositionRelative * 400), HysteresisKg = UsualErrors.HysteresisOfCapacity * 450 };
            var report = CalibrationEvaluation.Evaluate(Procedure.Bench.Input(pad.Calibrate([LoadStack.Empty, .. plan.Loads], _ => 50, plan.Repetitions), Fifties));
            if (report.Calibration is { } calibration)
                came.Add(calibration.Budget(400).Expanded());
        }

        came.Sort();
        output.WriteLine($"{plan.Repetitions} repetitions: foreseen {forecast.AtHighestKg:0.000}, came {came[came.Count / 10]:0.000} to {came[^(came.Count / 10)]:0.000}, median {came[came.Count / 2]:0.000}; {came.Count} of 60");
        Assert.InRange(came.Count, 55, 60);
        Assert.Equal(1, forecast.AtHighestKg / came[came.Count / 2], 0.15);
    }

    [Fact]
    public void The_sentence_names_lifts_kilograms_and_what_will_come_out() => Assert.Matches(
        @"^3 loads to 400 kg in 10 steps: 32 lifts, on and off, 1600 kg in all\. Foreseen: ±0\.\d\d kg \(95 %\) at 400 kg, ±0\.\d\d kg \(95 %\) at 200 kg$", PlanForecast.Of(Brief).Words.ToString());

    static ProcedurePlan Brief => Full with { Loads = LoadChoice.Of(Fifties, 450, PlanChoice.ShortLoads), Repetitions = 1, Preloads = 1 };

    static ProcedurePlan Full => ProcedureWalk.Plan with { Before = Procedure.Bench.Start, Masses = Fifties, Loads = LoadChoice.Of(Fifties, 450), CornerLoad = null, CreepTest = false, LoopApart = true };
}
