using ScaleLink.Measure;
using ScaleLink.Weighing.SiteCheck;

namespace Weighing.Tests.SiteCheck;

/// <summary>The trend of one zero against what was put into it. Own made-up pads, no published source, unless said otherwise.</summary>
public class ZeroTrendTests
{
    static ZeroTrend Trend(WatchedPad pad) => ZeroTrendFit.Of(pad.Moments)!;

    [Fact]
    public void A_known_coefficient_times_a_known_warming_is_told_within_the_interval()
    {
        // kg/K times K is kg: 14 g/K, four cells of class C at the limit of OIML R 60:2021, 5.6.1.3 (tests/reference/oiml-r60-2021-load-cells.json), warmed by 6 K in ten minutes.
        var random = new Random(5801);
        var covered = 0;
        for (var i = 0; i < 200; i++)
        {
            var trend = Trend(Watched.Pad(Corner.RF, random, t => 0.014 * 6 * t / 600, seconds: 200));
            covered += Math.Abs(trend.KgPerMinute.Estimate - 0.0084) <= trend.KgPerMinute.HalfWidth() ? 1 : 0;
            Assert.Equal(0.0084, trend.KgPerMinute.Estimate, 0.004);
        }

        Assert.InRange(covered, 180, 200);
    }

    [Fact]
    public void The_slope_of_quiet_points_has_the_textbook_uncertainty()
    {
        // sigma / sqrt(sum (t - mean)^2): JCGM 100:2008, H.3, for white noise. 601 points a second apart: n (n^2 - 1) / 12.
        var trend = Trend(Watched.Pad(Corner.LF, new Random(5802), noiseKg: 0.02));
        var expected = 60 * 0.02 / Math.Sqrt(601.0 * (601 * 601 - 1) / 12);
        Assert.InRange(trend.KgPerMinute.Uncertainty, 0.9 * expected, 2.5 * expected);
        Assert.InRange(trend.NoiseKg, 0.018, 0.022);
        Assert.Empty(trend.Touches);
    }

    [Fact]
    public void Whoever_steps_on_a_pad_is_a_touch_and_no_drift()
    {
        var touched = Watched.Pad(Corner.RF, new Random(5803), t => 0.0002 * t + (t is >= 200 and < 212 ? 71 : 0));
        var trend = Trend(touched);
        Assert.Equal(0.012, trend.KgPerMinute.Estimate, 0.002);
        var touch = Assert.Single(trend.Touches);
        Assert.Equal(71, touch.PeakKg, 0.2);
        Assert.InRange(touch.FromSeconds, 196, 200);
        Assert.InRange(touch.ToSeconds, 211, 215);
        Assert.Equal(0, touch.ShiftKg);
    }

    [Theory]
    [InlineData(40)]
    [InlineData(90)]
    public void Somebody_who_stays_is_still_no_drift(int seconds)
    {
        var trend = Trend(Watched.Pad(Corner.RF, new Random(5804), t => t >= 300 && t < 300 + seconds ? 71 : 0));
        Assert.Equal(0, trend.KgPerMinute.Estimate, 0.003);
        Assert.Single(trend.Touches);
    }

    [Fact]
    public void A_zero_that_stands_elsewhere_after_a_touch_is_told_by_how_much()
    {
        var trend = Trend(Watched.Pad(Corner.LR, new Random(5805), t => t < 250 ? 0 : t < 258 ? 30 : 0.4));
        Assert.Equal(0.4, Assert.Single(trend.Touches).ShiftKg, 0.02);
        Assert.Equal(0, trend.KgPerMinute.Estimate, 0.003);
    }

    [Fact]
    public void Noise_that_wanders_makes_the_slope_less_certain_than_white_noise_of_the_same_size()
    {
        var random = new Random(5806);
        double[] wander = new double[601];
        for (var i = 1; i < wander.Length; i++)
            wander[i] = 0.95 * wander[i - 1] + 0.0062 * Watched.Normal(random);
        var wandering = Trend(Watched.Pad(Corner.LF, random, t => wander[(int)t], noiseKg: 0));
        var white = Trend(Watched.Pad(Corner.LF, random, noiseKg: 0.02));
        // First-order noise of correlation r is worth n (1 - r) / (1 + r) points: 39 times fewer. Common practice.
        Assert.True(wandering.KgPerMinute.StandardUncertainty > 3 * white.KgPerMinute.StandardUncertainty);
    }

    [Fact]
    public void A_drift_that_only_begins_halfway_may_run_on_as_it_ends()
    {
        // The sun comes out: nothing for five minutes, then 0.06 kg a minute.
        var trend = Trend(Watched.Pad(Corner.RR, new Random(5807), t => t < 300 ? 0 : 0.001 * (t - 300)));
        Assert.InRange(0.06, trend.KgPerMinute.Estimate, trend.KgPerMinute.Estimate + 2 * trend.BendKgPerMinute);
        Assert.True(trend.KgPerMinute.StandardUncertainty < trend.BendKgPerMinute);
    }
}
