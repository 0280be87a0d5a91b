using ScaleLink.Measure;
using ScaleLink.Weighing.Settling;
using Weighing.Tests.Settling.Scenarios;

namespace Weighing.Tests.Settling;

public class SettlingEstimatorTests
{
    static readonly RockingRecord Record = Scenario.Linear.Record(1, 1);

    [Fact]
    public void Allocates_nothing_once_it_runs()
    {
        var estimator = new SettlingEstimator(new());
        foreach (var block in Record.Blocks) estimator.Add(block);
        estimator.Reset();

        var before = GC.GetAllocatedBytesForCurrentThread();
        foreach (var block in Record.Blocks) estimator.Add(block);

        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
    }

    [Fact]
    public void A_reset_leaves_nothing_of_the_past_but_the_noise()
    {
        var used = new SettlingEstimator(new() { NoiseKg = Record.QuietNoise() });
        foreach (var block in Record.Blocks) used.Add(block);
        used.Reset();
        var fresh = new SettlingEstimator(new() { NoiseKg = used.NoiseKg });

        foreach (var block in Record.Blocks[..300]) Assert.Equal(fresh.Add(block), used.Add(block));
    }

    [Fact]
    public void A_gap_says_moving_and_claims_nothing_until_a_second_has_been_seen()
    {
        var estimator = new SettlingEstimator(new());
        foreach (var block in Record.Blocks) estimator.Add(block);
        estimator.Reset();

        foreach (var block in Record.Blocks[..20])
        {
            var reading = estimator.Add(block);
            Assert.Equal(SettlingVerdict.Moving, reading.Verdict);
            Assert.False(reading.Claimed);
            Assert.Null(reading.CrossWeightPercent!.Value.StandardUncertainty);
        }
    }

    [Fact]
    public void Every_number_is_finite_even_on_constant_or_absent_loads()
    {
        var estimator = new SettlingEstimator(new());
        for (var i = 0; i < 400; i++)
        {
            var reading = estimator.Add(i < 200 ? default : new(300, 299, 251, 249));
            Assert.True(double.IsFinite(reading.Loads.Sum));
            Assert.True(double.IsFinite(reading.StandardUncertainty?.Sum ?? 0));
            Assert.True(double.IsFinite(reading.CrossWeightPercent?.Estimate ?? 0));
            Assert.Equal(i < 200, reading.CrossWeightPercent is null);
        }
    }

    [Fact]
    public void A_reading_for_the_record_has_been_settled_for_the_hold()
    {
        var estimator = new SettlingEstimator(new() { NoiseKg = Record.QuietNoise(), WeighingHoldSeconds = 1.5 });
        var settled = 0;
        var ready = 0;
        foreach (var block in Record.Blocks)
        {
            var reading = estimator.Add(block);
            settled = reading.Verdict == SettlingVerdict.Settled ? settled + 1 : 0;
            if (!reading.WeighingReady) continue;
            ready++;
            Assert.True(settled > 1.5 / SettlingEstimator.BlockSeconds, $"{settled} blocks");
        }
        Assert.True(ready > 100, $"{ready} blocks");
    }

    [Fact]
    public void Cross_weight_is_surer_than_the_pads_when_the_errors_are_one_heave()
    {
        // All four pads share one heave, so it cancels in the ratio on a car with equal loads; half is claimed at least.
        var draw = new Draw(3);
        var estimator = new SettlingEstimator(new() { ClaimLimitKg = 100, NoiseKg = Corners.Same(.01) });
        SettlingReading reading = default;
        var drift = 0.0;
        for (var k = 0; k < 100; k++)
        {
            drift += draw.Normal();
            reading = estimator.Add(Corners.Same(250 + drift));
        }
        var u = reading.StandardUncertainty!.Value;
        var asIfIndependent = 100.0 / 1000 * Math.Sqrt(.25 * u.Dot(u));
        Assert.True(reading.CrossWeightPercent!.Value.StandardUncertainty < .51 * asIfIndependent);
        Assert.True(reading.TotalKg.StandardUncertainty > 1.9 * Math.Sqrt(u.Dot(u)));
    }

    [Fact]
    public void Refuses_a_load_that_is_no_number()
    {
        var estimator = new SettlingEstimator(new());
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => estimator.Add(new(300, double.NaN, 250, 250)));
        Assert.Contains("reset", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, 1.5)]
    [InlineData(double.NaN, 1.5)]
    [InlineData(.1, .5)]
    [InlineData(.1, 5)]
    public void Refuses_options_that_make_no_sense(double tolerance, double hold) =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            new SettlingEstimator(new() { ToleranceKg = tolerance, WeighingHoldSeconds = hold }));

    [Fact]
    public void Creep_at_rest_is_named_with_its_rate()
    {
        var draw = new Draw(5);
        var estimator = new SettlingEstimator(new());
        Corners? drift = null;
        for (var k = 0; k < 1200; k++)
        {
            var creep = .3 * (1 - Math.Exp(-k * .05 / 100));
            drift = estimator.Add(Corners.From(_ => 300 + creep + .03 * draw.Normal())).DriftPerSecond;
        }
        // The line looks back 20 s from t = 60 s: the rate in its middle.
        var expected = .3 / 100 * Math.Exp(-50 / 100.0);
        foreach (var corner in Corners.All) Assert.Equal(expected, drift!.Value[corner], expected * .4);
    }

    [Fact]
    public void Noise_is_learned_in_quiet_and_not_from_rocking()
    {
        var draw = new Draw(6);
        var estimator = new SettlingEstimator(new() { NoiseKg = Corners.Same(.1) });
        for (var k = 0; k < 3000; k++) estimator.Add(Corners.From(_ => 300 + .03 * draw.Normal()));
        foreach (var corner in Corners.All) Assert.Equal(.03, estimator.NoiseKg[corner], .006);

        var learned = estimator.NoiseKg;
        for (var k = 0; k < 200; k++)
        {
            var rocking = 20 * Math.Exp(-k * .02) * Math.Cos(k * .5);
            estimator.Add(Corners.From(_ => 300 + rocking + .03 * draw.Normal()));
        }
        foreach (var corner in Corners.All) Assert.True(estimator.NoiseKg[corner] < 1.2 * learned[corner]);
    }

    [Fact]
    public void The_time_left_is_told_within_half_a_second_as_a_rule()
    {
        var errors = SharedRuns.In("linear").SelectMany(run =>
        {
            var first = run.Claims().FirstOrDefault(0);
            return Enumerable.Range(0, first).Where(k => RockingRecord.Time(k) > 0 && run.Readings[k].SecondsLeft is not null)
                .Select(k => Math.Abs(RockingRecord.Time(k) + run.Readings[k].SecondsLeft!.Value - RockingRecord.Time(first)));
        }).ToArray();
        Assert.True(errors.Length > 100);
        Assert.True(HoldTime.Percentile(errors, .5) <= .5);
    }
}
