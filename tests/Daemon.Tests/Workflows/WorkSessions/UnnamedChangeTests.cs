using ScaleLink.Daemon.Workflows.WorkSessions.Standings;
using ScaleLink.Measure;

namespace Daemon.Tests.Workflows.WorkSessions;

/// <summary>A settled car that stands elsewhere before anybody weighings. Limits by hand from JCGM 100:2008, G.3, with Student's t of its table G.2.</summary>
public class UnnamedChangeTests
{
    // 0.1 % with 3 degrees of freedom from before; four settles that agree bring 3 more: sqrt(3 x 0.01 / 6) = 0.0707 %, t(6) = 2.45,
    // one settle against the mean of four: 2.45 x 0.0707 x sqrt(1 + 1/4) = 0.194 %.
    private const double Limit = 0.194;

    [Theory]
    [InlineData(Limit - 0.01, false)]
    [InlineData(Limit + 0.01, true)]
    [InlineData(-Limit - 0.01, true)]
    public void What_the_pooled_repeatability_does_not_explain_is_asked_about(double change, bool isSeen)
    {
        using var bench = Settled(4);
        var finding = UnnamedChange.Of(bench.View, bench.Reading(Bench.LoadsAfter(default, change)));
        Assert.Equal(isSeen ? "SL-576" : null, finding?.Code);
        // Weighed, the same rule asks for its name.
        bench.Weigh(Bench.LoadsAfter(default, change));
        Assert.Equal(isSeen ? "SL-551" : null, bench.Session.Weighings[^1].Step.Findings.SingleOrDefault()?.Code);
        Assert.Equal(isSeen, bench.Session.NeedsName);
    }

    [Fact]
    public void One_settle_of_an_unknown_car_leaves_more_uncertainty()
    {
        using var bench = Settled(1);
        // t(3) = 3.18: 3.18 x 0.1 x sqrt 2 = 0.450 %.
        Assert.Null(UnnamedChange.Of(bench.View, bench.Reading(Bench.LoadsAfter(default, 0.44))));
        Assert.NotNull(UnnamedChange.Of(bench.View, bench.Reading(Bench.LoadsAfter(default, 0.46))));
    }

    [Fact]
    public void Mass_that_came_is_told_as_such()
    {
        using var bench = Settled(4);
        Assert.Equal("SL-551", UnnamedChange.Of(bench.View, bench.Reading(Bench.FirstLoads + new Corners(0, 0, 6, 6)))!.Code);
    }

    [Fact]
    public void Nothing_is_asked_about_the_weighed_rest_a_recorded_turn_or_a_reading_that_is_none()
    {
        using var bench = Settled(4);
        var elsewhere = Bench.LoadsAfter(default, 1);
        var same = bench.Session.Weighings[^1].Step.Reading with { LoadsKg = elsewhere };
        Assert.Null(UnnamedChange.Of(bench.View, same));
        Assert.Null(UnnamedChange.Of(bench.View, null));
        bench.Turn(new(0, 0.5, 0, 0));
        Assert.Null(UnnamedChange.Of(bench.View, bench.Reading(elsewhere)));
    }

    private static Bench Settled(int settles)
    {
        var bench = new Bench();
        bench.Prepare();
        for (var i = 0; i < settles; i++)
            bench.Weigh(Bench.FirstLoads);
        return bench;
    }
}
