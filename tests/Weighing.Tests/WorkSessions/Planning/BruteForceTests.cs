using ScaleLink.Measure;
using ScaleLink.Weighing.WorkSessions.Planning;

namespace Weighing.Tests.WorkSessions.Planning;

/// <summary>
/// The rounded plan against every plan there is. The objective: squares of cross weight, mean height, rake and side
/// difference missed, each in tolerances, plus 0.02 a corner touched plus 0.001 times turns squared.
/// </summary>
public class BruteForceTests
{
    [Theory]
    [InlineData(0.5, 2.6, 25, 7301)]
    [InlineData(0.25, 1.6, 25, 7302)]
    [InlineData(0.125, 0.8, 12, 7303)]
    public void No_allowed_plan_is_better(double smallestTurn, double thread, int cases, int seed)
    {
        var random = new Random(seed);
        var turned = 0;
        for (var i = 0; i < cases; i++)
        {
            var request = PlanCases.Draw(random, smallestTurn, thread) with { Refine = true };
            var plan = PerchPlanner.Plan(request);

            var best = Everything(smallestTurn, thread).Where(t => PlanCases.Allowed(request, t)).Min(t => Value(request, t));

            Assert.True(PlanCases.Allowed(request, plan.Turns));
            Assert.Equal(best, Value(request, plan.Turns), 1e-9 * (1 + best));
            Assert.Equal(best, plan.Objective, 1e-9 * (1 + best));
            turned += plan.Turns == default ? 0 : 1;
        }
        Assert.True(turned > cases / 2);
    }

    // Written out again, so that the product's own formula is checked too.
    static double Value(PlanRequest request, Corners turns)
    {
        var misses = PlanCases.Misses(request, turns);
        double cross = misses.CrossWeightPercent / request.Targets.CrossWeightTolerancePercent, mm = request.Targets.RideHeightToleranceMm;
        double value = cross * cross + (misses.MeanRideHeightMm * misses.MeanRideHeightMm + misses.RakeMm * misses.RakeMm + misses.LeftRightDifferenceMm * misses.LeftRightDifferenceMm) / (mm * mm);
        foreach (var corner in Corners.All)
            value += 0.001 * turns[corner] * turns[corner] + (turns[corner] == 0 ? 0 : 0.02);
        return value;
    }

    static IEnumerable<Corners> Everything(double step, double thread)
    {
        var n = (int)Math.Floor(thread / step);
        for (var a = -n; a <= n; a++)
            for (var b = -n; b <= n; b++)
                for (var c = -n; c <= n; c++)
                    for (var d = -n; d <= n; d++)
                        yield return step * new Corners(a, b, c, d);
    }
}
