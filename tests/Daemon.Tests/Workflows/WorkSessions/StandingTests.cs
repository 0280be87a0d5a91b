using ScaleLink.Daemon.Workflows.WorkSessions.Standings;
using ScaleLink.Measure;

namespace Daemon.Tests.Workflows.WorkSessions;

/// <summary>Verdict and repeatability. The figures are worked by hand from JCGM 100:2008 (4.2, G.3, G.4) with Student's t of its table G.2.</summary>
public class StandingTests
{
    [Fact]
    public void The_mean_of_four_settles_has_the_interval_of_a_pooled_repeatability()
    {
        using var bench = new Bench();
        bench.Prepare();
        double[] repeatability = [0.10, -0.10, 0.10, -0.10];
        foreach (var s in repeatability)
            bench.Weigh(Bench.LoadsAfter(default, s));
        var standing = Standing.Of(bench.Session)!;
        Assert.Equal(4, standing.Settles);
        // Before: 0.1 % with 3 degrees of freedom. Here: sum of squares 4 x 0.01 with 3 more. Pooled: sqrt((3 x 0.01 + 0.04) / 6).
        Assert.Equal(Math.Sqrt(0.07 / 6), standing.Repeatability.Percent, 4);
        Assert.Equal(6, standing.Repeatability.DegreesOfFreedom, 9);
        // Calibration: 0.1 kg at each corner on 1048 kg, weights near a half: 0.0095 %.
        var u = Math.Sqrt(0.07 / 6 / 4 + 0.0095 * 0.0095);
        Assert.Equal(u, standing.CrossWeightPercent.Uncertainty, 3);
        // t(6 degrees of freedom, 95 %) = 2.45, GUM table G.2; a little less for the calibration's many.
        Assert.InRange(standing.CrossWeightPercent.HalfWidth(), 2.40 * u, 2.45 * u);
        Assert.Equal(Aim.High, standing.Verdict);
    }

    [Fact]
    public void Words_show_no_more_than_the_interval_bears_out()
    {
        using var bench = new Bench();
        bench.Prepare();
        bench.Weigh(Bench.FirstLoads);
        var standing = Standing.Of(bench.Session)!;
        // One settle, 0.1 % with 3 degrees of freedom: t = 3.18.
        Assert.Equal("above target: 52.0 % ± 0.4 % (95 %, Student t, 1 settle)", standing.Words);
    }

    [Fact]
    public void Groups_begin_anew_with_each_adjustment()
    {
        using var bench = new Bench();
        bench.Prepare();
        bench.Weigh(Bench.FirstLoads);
        bench.Weigh(Bench.LoadsAfter(default, 0.05));
        bench.Turn(new(0, -0.5, -0.5, 0));
        bench.Weigh(Bench.LoadsAfter(new(0, -0.5, -0.5, 0)));
        Assert.Equal([2, 1], SettleGroups.Of(bench.Session.Weighings).Select(g => g.Count));
        Assert.Equal(1, Standing.Of(bench.Session)!.Settles);
    }
}
