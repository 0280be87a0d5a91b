using Daemon.Tests.Settling.Trials;

namespace Daemon.Tests.Settling;

/// <summary>The settled load and the cross weight of a rocking car, from bytes to readings, on the simulator's physics; fixed seeds, so every run is the same. The long form is in the bench.</summary>
public class PipelineSettlingTests
{
    private const int Seed = 9001, Records = 12;

    [Fact]
    public void The_loads_are_right_in_half_the_time_of_a_one_second_average_and_settled_is_never_a_lie()
    {
        foreach (var kind in new[] { RockingKind.Linear, RockingKind.WithFriction })
        {
            var trials = Each(number => PipelineTrial.Run(kind, Seed, number));
            Assert.True(Median(trials, t => t.TimeWithin(t.Error, .1)) <= .5 * Median(trials, t => t.TimeWithin(t.AverageError, .1)), kind.Name);
            Assert.All(trials, t => Assert.All(t.Claims(), k => Assert.True(t.Error(k) <= .1)));
            Assert.All(trials, t => Assert.NotEmpty(t.Claims()));
            Assert.All(trials, t => Assert.False(t.ClaimsWithin(0, .5)));
            var covered = trials.Select(t => t.Covered(1, 20)).ToArray();
            Assert.True(covered.Sum(c => c.Covered) >= .93 * covered.Sum(c => c.Stated), kind.Name);
        }
    }

    [Fact]
    public void Cross_weight_of_a_known_car_is_right_while_it_rocks_and_while_somebody_works_on_it()
    {
        var trials = Each(number => PipelineTrial.Run(RockingKind.Linear, Seed, number));
        Assert.True(Slowest(trials, t => t.TimeWithin(t.CrossWeightError, .05)) <= .25 * Slowest(trials, t => t.TimeWithin(t.RatioAverageError, .05)));
        Assert.True(Median(trials, t => t.CrossWeightError(JustBefore(t))) <= .5 * Median(trials, t => t.RatioAverageError(JustBefore(t))));
    }

    [Theory]
    [InlineData(10)]
    [InlineData(320)]
    [InlineData(1000)]
    public void The_rate_of_the_pads_does_not_matter(double hertz)
    {
        var trials = Each(number => PipelineTrial.Run(RockingKind.Linear with { Hums = hertz > 10 }, Seed, number, hertz), 4);
        Assert.All(trials, t => Assert.NotEmpty(t.Claims()));
        Assert.All(trials, t => Assert.All(t.Claims(), k => Assert.InRange(t.Error(k), 0, .1)));
        Assert.True(Median(trials, t => t.TimeWithin(t.Error, .1)) <= 2);
    }

    [Fact]
    public void A_hand_on_the_car_takes_settled_back()
    {
        var late = Each(number => PipelineTrial.Lean(RockingKind.Linear, Seed, number) ?? 0);
        Assert.InRange(late.Order().ElementAt(Records / 2), .001, .2);
    }

    private static T[] Each<T>(Func<int, T> trial, int count = Records) => [.. Enumerable.Range(0, count).AsParallel().AsOrdered().Select(trial)];

    private static int JustBefore(PipelineTrial trial) => Array.FindIndex(trial.Times, t => t >= -.2);

    private static double Slowest(PipelineTrial[] trials, Func<PipelineTrial, double> of) => trials.Max(of);

    private static double Median(PipelineTrial[] trials, Func<PipelineTrial, double> of) => trials.Select(of).Order().ElementAt(trials.Length / 2);
}
