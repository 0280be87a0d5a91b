using ScaleLink.Measure;
using ScaleLink.Weighing.Settling;
using Weighing.Tests.Settling.Scenarios;

namespace Weighing.Tests.Settling;

/// <summary>What is claimed must be so. Limits are this project's own targets; no published source.</summary>
public class HonestyTests
{
    const double ToleranceKg = .1;

    static readonly (double From, double To)[] Ages = [(1, 1.5), (1.5, 2), (2, 3), (3, 5), (5, 20)];

    [Theory]
    [InlineData("linear")]
    [InlineData("friction")]
    public void Stated_intervals_cover_the_truth_at_every_age_after_a_second(string name)
    {
        var runs = SharedRuns.In(name);
        foreach (var (from, to) in Ages)
        {
            var (covered, stated) = Coverage(runs, from, to, evenAfterASlip: true);
            Assert.True(covered >= .93 * stated, $"{from} to {to} s: {covered} of {stated}");
        }
    }

    [Theory]
    [InlineData("linear")]
    [InlineData("friction")]
    public void So_does_the_interval_of_cross_weight(string name)
    {
        foreach (var (from, to) in Ages)
        {
            var covers = SharedRuns.In(name).SelectMany(run => Enumerable.Range(0, run.Readings.Length)
                .Where(k => RockingRecord.Time(k) >= from && RockingRecord.Time(k) < to && run.Readings[k].Claimed)
                .Select(k => CoversCrossWeight(run.Readings[k].CrossWeightPercent!.Value, run.Record.Truth[k]))).ToArray();
            Assert.True(covers.Length > 0 && covers.Count(c => c) >= .93 * covers.Length, $"{from} to {to} s: {covers.Count(c => c)} of {covers.Length}");
        }
    }

    static bool CoversCrossWeight(Value stated, Corners truth) =>
        Math.Abs(stated.Estimate - 100 * (truth.RF + truth.LR) / truth.Sum) <= SettlingEstimator.Coverage * stated.StandardUncertainty!.Value;

    [Fact]
    public void In_a_workshop_they_cover_it_wherever_friction_has_not_just_let_go()
    {
        var runs = SharedRuns.In("workshop");
        foreach (var (from, to) in Ages)
        {
            var (covered, stated) = Coverage(runs, from, to, evenAfterASlip: false);
            Assert.True(covered >= .93 * stated, $"{from} to {to} s: {covered} of {stated}");
        }
    }

    [Theory]
    [InlineData("linear")]
    [InlineData("workshop")]
    [InlineData("friction")]
    public void Nothing_is_claimed_in_the_first_half_second(string name) =>
        Assert.DoesNotContain(SharedRuns.In(name), run => run.ClaimsWithin(0, .5));

    [Theory]
    [InlineData("linear", .005)]
    [InlineData("friction", .01)]
    [InlineData("workshop", .06)]
    public void Settled_is_seldom_said_in_error_and_then_only_after_a_slip(string name, double allowed)
    {
        var claims = SharedRuns.In(name).SelectMany(run => run.Claims().Select(k => (run, k))).ToArray();
        var wrong = claims.Where(c => c.run.Error(c.k) > ToleranceKg).ToArray();
        Assert.True(claims.Length >= SharedRuns.Trials, $"{claims.Length} claims");
        Assert.True(wrong.Length <= allowed * claims.Length, $"{wrong.Length} of {claims.Length}");
        Assert.All(wrong, c => Assert.True(c.run.Record.SlippedWithinASecond(RockingRecord.Time(c.k))));
    }

    static (int Covered, int Stated) Coverage(SettlingTrial[] runs, double from, double to, bool evenAfterASlip)
    {
        int covered = 0, stated = 0;
        foreach (var run in runs)
            for (var k = 0; k < run.Readings.Length; k++)
            {
                var t = RockingRecord.Time(k);
                if (t < from || t >= to || !evenAfterASlip && run.Record.SlippedWithinASecond(t)) continue;
                var (c, s) = run.Covered(k);
                (covered, stated) = (covered + c, stated + s);
            }
        Assert.True(stated > 0);
        return (covered, stated);
    }
}
