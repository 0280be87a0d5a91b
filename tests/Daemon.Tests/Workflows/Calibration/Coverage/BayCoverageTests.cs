namespace Daemon.Tests.Workflows.Calibration.Coverage;

/// <summary>
/// Does every stated ± hold? 30 bays here, a third of each plan; 200 bays of each plan with SCALELINK_LONG=1 (SCALELINK_BAYS for another number). A
/// share of bays fails when its exact binomial interval lies wholly outside 93 to 99 %; a width fails in the long form when it is more than 1.3
/// times what the truth of the simulator requires (see the plans), for ten bays do not tell what is required.
/// </summary>
public class BayCoverageTests(ITestOutputHelper output)
{
    private const int Seed = 50_021, FewBays = 10;
    private const double Lowest = 0.93, Highest = 0.99;

    private static int? LongBays => Environment.GetEnvironmentVariable("SCALELINK_LONG") == "1"
        ? int.Parse(Environment.GetEnvironmentVariable("SCALELINK_BAYS") ?? "200")
        : null;

    [Fact]
    public void By_the_full_plan_what_is_stated_holds_the_truth_in_95_of_100_bays_and_is_no_wider_than_it_must_be() => Judge(CoveragePlan.Usual);

    [Fact]
    public void By_one_repetition_too() => Judge(CoveragePlan.Short);

    [Fact]
    public void By_the_short_plan_too() => Judge(CoveragePlan.Default);

    private void Judge(CoveragePlan plan)
    {
        var rows = BayCoverage.Of(plan, Seed, LongBays ?? FewBays, LongBays is null ? 2 : 3);
        foreach (var row in rows)
            output.WriteLine($"{plan.Name}: {row}");
        Assert.All(rows, row => Assert.True(row.Interval.High >= Lowest && row.Interval.Low <= Highest, row.ToString()));
        if (LongBays is not null)
            Assert.All(rows, row => Assert.True(row.Wideness <= plan.Widest, row.ToString()));
    }
}
