using ScaleLink.Weighing.Freezing;

namespace Weighing.Tests.Freezing;

/// <summary>
/// A converter that stops is found by its noise, and no fault is invented for pads that are rightly constant. Invented pads with seeded noise; the limits are
/// the project's own. Common practice, no published source.
/// </summary>
public class ValueWatchTests
{
    private const double Hertz = 80;
    private readonly ValueWatch _watch = new();
    private double _seconds;

    [Theory]
    [InlineData(0.5)]
    [InlineData(5)]
    [InlineData(200)]
    public void A_noisy_converter_that_stops_is_found_within_four_seconds(double sigma)
    {
        var noise = new Noise(11);
        Run(40, _ => noise.Next(sigma) + 1000.5);
        Assert.True(_watch.ShowsNoise);
        Assert.False(_watch.IsStill);
        var stopped = _watch.Seen.Value;
        Assert.InRange(Until(() => _watch.IsStill, 10, _ => stopped), 2.9, 4);
        Run(0.1, _ => noise.Next(sigma) + 1000.5);
        Assert.False(_watch.IsStill);
    }

    // Where noise is smallest beside a division and lies in its middle, it changes the number least often.
    [Theory]
    [InlineData(0.45, 0.0)]
    [InlineData(0.45, 0.5)]
    [InlineData(0.3, 0.0)]
    [InlineData(0.3, 0.5)]
    [InlineData(0.05, 0.5)]
    public void A_whole_day_of_small_noise_is_no_standstill(double sigma, double middle)
    {
        var noise = new Noise(12);
        // It wanders from the edge of a division to its middle and stays there.
        Run(600, t => noise.Next(sigma) + 100 + middle);
        for (var hour = 0; hour < 24; hour++)
            Run(60, t =>
            {
                Assert.False(_watch.IsStill);
                return noise.Next(sigma) + 101.0;
            });
    }

    [Fact]
    public void A_filtered_indicator_is_rightly_constant_after_cars_came_and_rocked()
    {
        for (var car = 1; car < 20; car++)
        {
            var load = 500.0 + car;
            // Comes on, rocks at 2 Hz for half a minute, dying away, and stands for ten minutes on one number.
            Run(30, t => load + 40 * Math.Exp(-t / 20) * Math.Sin(4 * Math.PI * t));
            Assert.False(_watch.ShowsNoise);
            Run(600, _ => load);
            Assert.False(_watch.IsStill);
        }
    }

    [Fact]
    public void An_indicator_that_repeats_each_number_eight_times_is_known_as_such()
    {
        var noise = new Noise(13);
        var (held, k) = (0.0, 0);
        Run(120, _ => k++ % 8 == 0 ? held = 1000 + noise.Next(3) : held);
        Assert.True(_watch.ShowsNoise);
        Run(600, _ =>
        {
            Assert.False(_watch.IsStill);
            return k++ % 8 == 0 ? held = 1000 + noise.Next(3) : held;
        });
        Assert.InRange(Until(() => _watch.IsStill, 20, _ => held), 2.9, 8);
    }

    [Fact]
    public void A_standstill_before_the_noise_was_known_does_not_hide_the_next()
    {
        var noise = new Noise(16);
        for (var k = 0; k < 3; k++)
        {
            Run(6, _ => 1000 + noise.Next(5));
            var stopped = _watch.Seen.Value;
            Run(8, _ => stopped);
        }

        Run(30, _ => 1000 + noise.Next(5));
        var again = _watch.Seen.Value;
        Assert.InRange(Until(() => _watch.IsStill, 10, _ => again), 2.9, 4);
    }

    [Fact]
    public void A_pad_that_is_held_at_zero_is_no_standstill()
    {
        var noise = new Noise(14);
        Run(60, _ => 1000 + noise.Next(2));
        Assert.True(_watch.ShowsNoise);
        Run(600, _ => 0);
        Assert.False(_watch.IsStill);
    }

    [Fact]
    public void Time_without_samples_does_not_count()
    {
        var noise = new Noise(15);
        Run(60, _ => 1000 + noise.Next(2));
        var last = _watch.Seen.Value;
        for (var gap = 0; gap < 20; gap++)
        {
            Run(0.5, _ => last);
            _seconds += 5;
            Assert.False(_watch.IsStill);
        }
    }

    private void Run(double seconds, Func<double, double> value)
    {
        for (var k = 0; k < seconds * Hertz; k++)
            _watch.Add(_seconds += 1 / Hertz, (long)Math.Round(value(k / Hertz)));
    }

    private double Until(Func<bool> holds, double within, Func<double, double> value)
    {
        var from = _seconds;
        while (!holds() && _seconds < from + within)
            Run(1 / Hertz, value);
        Assert.True(holds());
        return _seconds - from;
    }

    /// <summary>Normal noise by the method of Box and Muller (1958).</summary>
    private sealed class Noise(int seed)
    {
        private readonly Random _random = new(seed);

        public double Next(double sigma) => sigma * Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());
    }
}
