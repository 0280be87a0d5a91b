using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Workflows.WorkSessions;
using ScaleLink.Daemon.Workflows.WorkSessions.Standings;
using ScaleLink.Daemon.Workflows.WorkSessions.Steps;
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

    // One settle on target, 0.1 % with 3 degrees of freedom: t(3) = 3.18, 0.32 > 0.2; two: t(4) = 2.78 times sqrt(0.1^2 / 2 + 0.0095^2) = 0.198; at 0.04 % from the target
    // three are wanted: t(5) = 2.57, 0.150 < 0.16.
    [Fact]
    public void What_is_not_sure_says_how_many_settles_would_decide_it_and_is_finished_with_a_reason_only()
    {
        using var bench = OnTarget(Bench.Start());
        var standing = Standing.Of(bench.Session)!;
        Assert.Equal((Aim.TooCloseToTell, 1), (standing.Verdict, standing.MoreSettles));
        Assert.Equal("on target so far: settle once more", standing.Headline);
        Assert.Equal("On target so far: settle once more to be sure, and weigh each time.", SessionWords.Next(bench.View));
        foreach (var check in bench.View.LastSteps)
            bench.Take(SessionRules.Check(bench.View, check.Item.Key, done: false, skip: true, "", "not here"));
        var refused = Assert.Throws<StepRefusedException>(() => SessionRules.Finish(bench.View, "")).Diagnostic;
        Assert.Equal("SL-566", refused.Code);
        Assert.StartsWith("Settle once more", refused.Remedy.ToString());
        Assert.False(SessionRules.Finish(bench.View, "the light goes").Abandoned);
    }

    [Fact]
    public void Settles_that_agree_decide_it()
    {
        using var bench = OnTarget(Bench.Start(), offPercent: 0.04);
        Assert.Equal(("on target so far: settle twice more", 2), (Standing.Of(bench.Session)!.Headline, Standing.Of(bench.Session)!.MoreSettles));
        var loads = bench.Session.Weighings[^1].Step.Reading.LoadsKg;
        bench.Weigh(loads);
        Assert.Equal(1, Standing.Of(bench.Session)!.MoreSettles);
        bench.Weigh(loads);
        Assert.Equal(("on target", 0), (Standing.Of(bench.Session)!.Headline, Standing.Of(bench.Session)!.MoreSettles));
        Assert.DoesNotContain("to be sure", SessionWords.Next(bench.View));
    }

    [Fact]
    public void What_settling_cannot_decide_is_told_so()
    {
        // The calibration errs by 0.0095 %, and the band is narrower than that.
        using var bench = OnTarget(Bench.Start() with { TolerancePercent = 0.015 });
        var standing = Standing.Of(bench.Session)!;
        Assert.Equal((Aim.TooCloseToTell, null), (standing.Verdict, standing.MoreSettles));
        Assert.Contains("by settling", standing.Headline);
    }

    private static Bench OnTarget(SessionStarted start, double offPercent = 0)
    {
        var bench = new Bench(start);
        bench.Prepare();
        bench.Weigh(Bench.FirstLoads);
        bench.Take(SessionRules.Adjust(bench.View, null, asPlanned: true, ""));
        var turns = bench.Session.OpenTurns;
        var shares = Bench.LoadsAfter(turns);
        // Exactly there, whatever the smallest turn leaves.
        bench.Weigh(Bench.LoadsAfter(turns, start.TargetPercent + offPercent - 100 * (shares.RF + shares.LR) / shares.Sum));
        return bench;
    }
}
