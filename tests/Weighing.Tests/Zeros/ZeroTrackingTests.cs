using CsCheck;
using ScaleLink.Weighing.Zeros;

namespace Weighing.Tests.Zeros;

/// <summary>Limits of OIML R 76-1:2006, 4.5.7 and 4.5.1.</summary>
public class ZeroTrackingTests
{
    static readonly ZeroTrackingOptions On = new() { Enabled = true, IntervalKg = 0.01 };
    static readonly TimeSpan Second = TimeSpan.FromSeconds(1);

    [Fact]
    public void It_is_off_unless_asked_for() =>
        Assert.Equal(default, ZeroTracking.Step(default, 0.003, true, Second, 30, new ZeroTrackingOptions()));

    [Fact]
    public void It_follows_no_faster_than_half_an_interval_a_second()
    {
        // Worked numbers of the reference file: Max 30 kg, e = d = 0.01 kg, 0.005 kg/s.
        var worked = Statistics.ReferenceData.Json("oiml-r76-1-2006-requirements.json").GetProperty("zero").GetProperty("worked_numbers");
        var limit = worked.GetProperty("tracking_kg_per_s").GetDouble();
        Assert.Equal(limit / 10, ZeroTracking.Step(default, 0.005, true, Second / 10, 30, On).SumKg, 1e-12);
        Assert.Equal(0.003, ZeroTracking.Step(default, 0.003, true, Second, 30, On).SumKg, 1e-12);
    }

    [Fact]
    public void It_never_touches_a_load_or_a_moving_pad()
    {
        Assert.Equal(0, ZeroTracking.Step(default, 0.0051, true, Second, 30, On).SumKg);
        Assert.Equal(0, ZeroTracking.Step(default, 0.003, false, Second, 30, On).SumKg);
        Assert.Equal(0, ZeroTracking.Step(default, 0.003, true, TimeSpan.Zero, 30, On).SumKg);
    }

    [Fact]
    public void Its_sum_stays_within_four_per_cent_of_capacity_in_all()
    {
        var track = default(ZeroTrack);
        for (var i = 0; i < 10_000; i++)
            track = ZeroTracking.Step(track, 0.004, true, Second, 30, On);
        // Half of the 1.2 kg setting range of the worked numbers, to one side.
        Assert.Equal(0.6, track.SumKg, 1e-12);
    }

    [Fact]
    public void A_slow_drift_is_followed_to_the_end() => Gen.Double[-0.2, 0.2].Sample(drift =>
    {
        var track = default(ZeroTrack);
        for (var i = 1; i <= 1000; i++)
            track = ZeroTracking.Step(track, drift * i / 1000 - track.SumKg, true, Second, 30, On);
        Assert.Equal(drift, track.SumKg, 1e-9);
    });
}
