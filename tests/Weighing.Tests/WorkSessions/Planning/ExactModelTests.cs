using ScaleLink.Measure;
using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Statics;
using ScaleLink.Weighing.WorkSessions.Learning;
using ScaleLink.Weighing.WorkSessions.Planning;
using Weighing.Tests.Statics;

namespace Weighing.Tests.WorkSessions.Planning;

/// <summary>Plans for drawn cars whose rates are known, carried out on the car at rest by least energy.</summary>
public class ExactModelTests
{
    [Fact]
    public void Unrounded_turns_reach_cross_weight_and_keep_ride_heights_in_one_step()
    {
        var random = new Random(7401);
        double worstCross = 0, worstHeight = 0;
        for (var i = 0; i < 200; i++)
        {
            var (car, plan, before) = PlanFor(random);

            var after = car.Rest(turns: plan.UnroundedTurns);

            worstCross = Math.Max(worstCross, Math.Abs(CrossWeight(after.Loads) - 50));
            var rise = after.Heights - before;
            foreach (var corner in Corners.All)
                worstHeight = Math.Max(worstHeight, Math.Abs(rise[corner]));
        }
        TestContext.Current.TestOutputHelper?.WriteLine($"worst cross weight miss {worstCross:F4} %, worst ride height miss {worstHeight:F4} mm");
        Assert.True(worstCross < 0.02, $"{worstCross} %");
        Assert.True(worstHeight < 0.1, $"{worstHeight} mm");
    }

    [Fact]
    public void Rounded_turns_do_what_the_forecast_says()
    {
        var random = new Random(7402);
        for (var i = 0; i < 100; i++)
        {
            var (car, plan, before) = PlanFor(random);

            var after = car.Rest(turns: plan.Turns);

            Assert.Equal(plan.Forecast.CrossWeightPercent.Estimate, CrossWeight(after.Loads), 0.02);
            foreach (var corner in Corners.All)
            {
                Assert.Equal(plan.Forecast.Loads.Loads[corner], after.Loads[corner], 0.003 * car.TotalKg / 4);
                Assert.Equal(plan.Forecast.HeightChangesMm[corner], (after.Heights - before)[corner], 0.1);
            }
        }
    }

    static (EnergyCar Car, PerchPlan Plan, Corners Heights) PlanFor(Random random)
    {
        var car = RandomCars.Next(random, bars: false);
        var before = car.Rest();
        var known = StepLearner.Start(new CarStatics(RandomCars.ModelOf(car), car.TotalKg), new LoadSummary(before.Loads, default));
        return (car, PerchPlanner.Plan(new(known, Refine: true)), before.Heights);
    }

    static double CrossWeight(Corners loads) => 100 * (loads.RF + loads.LR) / loads.Sum;
}
