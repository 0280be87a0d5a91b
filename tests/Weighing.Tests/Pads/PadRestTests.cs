using ScaleLink.Weighing.Pads;

namespace Weighing.Tests.Pads;

/// <summary>Rest of a load that does not swing by itself. Limits by common practice, no published source.</summary>
public class PadRestTests
{
    [Fact]
    public void A_quiet_load_rests_and_its_noise_is_found()
    {
        var verdict = PadRest.Judge(Noise(160, 0.1, new Random(1)));
        Assert.True(verdict.Settled);
        Assert.Equal(1, verdict.Progress);
        Assert.InRange(verdict.NoiseKg!.Value, 0.085, 0.115);
    }

    [Theory]
    [InlineData(10, 450)]
    [InlineData(80, 490)]
    [InlineData(320, 490)]
    public void Noise_alone_seldom_keeps_a_load_from_resting(int rate, int fewest)
    {
        // The same density at each rate: 0.1 kg at 80 samples a second.
        var chance = new Random(2);
        var settled = Enumerable.Range(0, 500).Count(_ => PadRest.Judge(Noise((int)(rate * PadRest.WindowSeconds), 0.1 * Math.Sqrt(rate / 80.0), chance)).Settled);
        // Ten a second leave two samples a piece, from which the noise is but roughly known.
        Assert.InRange(settled, fewest, 500);
    }

    [Theory]
    [InlineData(0.5, 0.4)]
    [InlineData(1.0, 0.6)]
    public void A_step_is_seen_and_progress_counts_from_it(double secondsAgo, double mostProgress)
    {
        var loads = Noise(160, 0.02, new Random(3));
        for (var i = loads.Length - (int)(80 * secondsAgo); i < loads.Length; i++)
            loads[i] += 20;
        var verdict = PadRest.Judge(loads);
        Assert.False(verdict.Settled);
        Assert.InRange(verdict.Progress, 0.1, mostProgress);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(10)]
    public void A_mass_that_was_put_down_a_moment_ago_does_not_pass_for_noise(int samplesAgo)
    {
        var loads = Noise(160, 0.02, new Random(5));
        for (var i = loads.Length - samplesAgo; i < loads.Length; i++)
            loads[i] += 100;
        Assert.False(PadRest.Judge(loads).Settled);
    }

    [Fact]
    public void A_slow_creep_beyond_the_tolerance_is_no_rest()
    {
        var loads = Noise(160, 0.01, new Random(4));
        for (var i = 0; i < loads.Length; i++)
            loads[i] += 0.15 * i / loads.Length;
        Assert.False(PadRest.Judge(loads).Settled);
    }

    [Fact]
    public void Too_few_samples_are_never_at_rest() => Assert.Equal(default, PadRest.Judge(new double[15]));

    static double[] Noise(int count, double kg, Random chance) =>
        [.. Enumerable.Range(0, count).Select(_ => kg * Math.Sqrt(-2 * Math.Log(1 - chance.NextDouble())) * Math.Cos(2 * Math.PI * chance.NextDouble()))];
}
