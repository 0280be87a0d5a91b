namespace Daemon.Tests.Workflows.Calibration.Coverage;

/// <summary>
/// Does every stated ± hold? 20 bays here, 200 of each plan with SCALELINK_LONG=1 (SCALELINK_BAYS for another number). A share of bays fails when
/// its exact binomial interval lies wholly outside 93 to 99 %; a width fails in the long form when it is more than 1.3 times what the truth of
/// the simulator requires, for 20 bays do not tell what is required.
/// </summary>
public class BayCoverageTests(ITestOutputHelper output)
{
    private const int Seed = 50_021;
    private const double Lowest = 0.93, Highest = 0.99, Widest = 1.3;

    private static int LongBays => Environment.GetEnvironmentVariable("SCALELINK_LONG") == "1"
        ? int.Parse(Environment.GetEnvironmentVariable("SCALELINK_BAYS") ?? "200")
        : 0;

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void What_is_stated_holds_the_truth_in_95_of_100_bays_and_is_no_wider_than_it_must_be(bool isShort)
    {
        var plan = isShort ? CoveragePlan.Short : CoveragePlan.Usual;
        var rows = BayCoverage.Of(plan, Seed, LongBays > 0 ? LongBays : 10);
        foreach (var row in rows)
            output.WriteLine($"{plan.Name}: {row}");
        Assert.All(rows, row => Assert.True(row.Interval.High >= Lowest && row.Interval.Low <= Highest, row.ToString()));
        if (LongBays > 0)
            Assert.All(rows, row => Assert.True(row.Wideness <= Widest, row.ToString()));
    }
}
