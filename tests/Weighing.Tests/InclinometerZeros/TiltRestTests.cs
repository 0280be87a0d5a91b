using ScaleLink.Weighing.InclinometerZeros;

namespace Weighing.Tests.InclinometerZeros;

/// <summary>When a window of an inclinometer counts as a pad at rest. From memory: no published source for the limits.</summary>
public class TiltRestTests
{
    private static readonly DateTimeOffset At = new(2026, 11, 28, 9, 0, 0, TimeSpan.Zero);

    [Fact]
    public void Noise_alone_is_rest_and_its_mean_is_known_by_the_root_of_its_number()
    {
        var random = new Random(3);
        var read = 0;
        for (var k = 0; k < 200; k++)
        {
            var reading = TiltRest.Read(Window(160, _ => 0.4 + 0.01 * Normal(random)), At);
            if (reading is null)
                continue;
            read++;
            Assert.Equal(0.4, reading.PitchDeg, 5 * 0.01 / Math.Sqrt(120));
            // The larger of two axes over three quarters of the window; chi-squared of 119 degrees leaves a tenth and more.
            Assert.InRange(reading.RepeatabilityDeg, 0.8 * 0.01 / Math.Sqrt(120), 1.3 * 0.01 / Math.Sqrt(120));
        }

        Assert.InRange(read, 198, 200);
    }

    [Theory]
    [InlineData(12, true)]
    [InlineData(11, false)]
    public void A_slow_inclinometer_needs_twelve_samples(int samples, bool isEnough) => Assert.Equal(isEnough, TiltRest.Read(Window(samples, _ => 0.4), At) is not null);

    [Fact]
    public void A_pad_that_is_put_down_sinks_or_shakes_is_not_at_rest()
    {
        Assert.Null(TiltRest.Read(Window(160, k => k < 40 ? 8 * Math.Sin(Math.PI * k / 40) : 0.4), At));
        Assert.Null(TiltRest.Read(Window(160, k => 0.4 + 0.1 * k / 160), At));
        Assert.Null(TiltRest.Read(Window(160, k => k % 2 == 0 ? 0.9 : -0.1), At));
        Assert.NotNull(TiltRest.Read(Window(160, k => 0.4 + 0.02 * k / 160), At));
    }

    [Fact]
    public void The_first_window_that_passes_after_a_swing_holds_nothing_of_it()
    {
        // Eight degrees in a second and a half, as hands move a pad; 80 samples a second.
        var first = Enumerable.Range(0, 160).Select(since => TiltRest.Read(Window(160, k => k + since < 120 ? 0.4 + 8 * Math.Sin(Math.PI * (k + since) / 120) : 0.4), At)).First(r => r is not null);
        Assert.Equal(0.4, first!.PitchDeg, 1e-9);
    }

    private static (double, double)[] Window(int samples, Func<int, double> angle) => [.. Enumerable.Range(0, samples).Select(k => (angle(k), -angle(k)))];

    // Box and Muller.
    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(Math.Tau * random.NextDouble());
}
