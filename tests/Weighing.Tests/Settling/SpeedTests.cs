using Weighing.Tests.Settling.Scenarios;

namespace Weighing.Tests.Settling;

/// <summary>
/// Short forms of the long runs in the bench, on fixed seeds. The cars are made up, so the limits are this project's own
/// targets; no published source. The rival sees the same records.
/// </summary>
public class SpeedTests
{
    const double BandKg = .1;

    [Fact]
    public void Linear_rocking_is_read_in_half_the_time_of_a_one_second_average_and_a_quarter_when_it_is_bad()
    {
        var (own, rival) = Race("linear");
        Assert.True(Median(own) <= .5 * Median(rival), $"{Median(own)} against {Median(rival)}");
        Assert.True(Bad(own) <= .25 * Bad(rival), $"{Bad(own)} against {Bad(rival)}");
    }

    [Fact]
    public void With_friction_it_is_read_in_half_the_time_and_six_tenths_when_it_is_bad()
    {
        var (own, rival) = Race("friction");
        Assert.True(Median(own) <= .5 * Median(rival), $"{Median(own)} against {Median(rival)}");
        Assert.True(Bad(own) <= .6 * Bad(rival), $"{Bad(own)} against {Bad(rival)}");
    }

    static (double[] Own, double[] Rival) Race(string scenario)
    {
        var runs = SharedRuns.In(scenario);
        return ([.. runs.Select(run => run.TimeWithin(BandKg))],
            [.. runs.Select(run => Rivals.TimeWithin(run.Record, Rivals.OneSecond(run.Record), BandKg))]);
    }

    static double Median(double[] times) => HoldTime.Percentile(times, .5);

    static double Bad(double[] times) => HoldTime.Percentile(times, .95);
}
