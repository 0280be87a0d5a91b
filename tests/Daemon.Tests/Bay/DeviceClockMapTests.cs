using ScaleLink.Daemon.Bay;

namespace Daemon.Tests.Bay;

public class DeviceClockMapTests
{
    private const long Second = 1_000_000_000;

    [Theory]
    [InlineData(80, 0)]
    [InlineData(80, 100)]
    [InlineData(1000, -80)]
    [InlineData(10, 40)]
    public void Bursts_of_an_adapter_do_not_move_the_instant_of_a_sample(int rate, double ppm)
    {
        var map = new DeviceClockMap();
        var worst = 0.0;
        for (var k = 0; k < rate * 60; k++)
        {
            var truth = (long)(k * (double)Second / rate);
            var mapped = map.Map(Device(truth, ppm), Burst(truth));
            if (truth > 20 * Second)
                worst = Math.Max(worst, Math.Abs(mapped - truth - ShortestDelay));
        }

        // One millisecond of skew between two pads under 20 kg of rocking at 2 Hz fakes 0.01 % of cross weight.
        Assert.InRange(worst, 0, 1_500_000);
    }

    [Fact]
    public void Drift_is_found_to_a_few_parts_per_million()
    {
        var map = new DeviceClockMap();
        for (var k = 0; k < 80 * 100; k++)
        {
            var truth = k * Second / 80;
            map.Map(Device(truth, 60), Burst(truth));
        }

        Assert.InRange(map.DriftPpm!.Value, 50, 70);
    }

    [Fact]
    public void A_host_held_up_for_ten_seconds_still_places_the_samples_where_they_were_taken()
    {
        var map = new DeviceClockMap();
        for (var k = 0; k < 80 * 30; k++)
        {
            var truth = k * Second / 80;
            // From 20 s on nothing is read for 1.5 s; then all of it at once.
            var arrival = truth is > 20 * Second and < 21 * Second + Second / 2 ? 21 * Second + Second / 2 : truth;
            var mapped = map.Map(Device(truth, 0), arrival + ShortestDelay);
            if (k > 80)
                Assert.InRange(mapped - truth, 0, 2 * ShortestDelay);
        }
    }

    [Fact]
    public void A_device_that_starts_anew_is_followed_at_once()
    {
        var map = new DeviceClockMap();
        for (var k = 0; k < 80 * 10; k++)
            map.Map(Device(k * Second / 80, 0), k * Second / 80 + ShortestDelay);
        var restart = 11 * Second;
        for (var k = 0; k < 80; k++)
        {
            var truth = restart + k * Second / 80;
            Assert.InRange(map.Map((uint)(k * 12_500), truth + ShortestDelay) - truth, 0, 2 * ShortestDelay);
        }
    }

    [Fact]
    public void The_wrap_of_the_device_clock_goes_unnoticed()
    {
        var map = new DeviceClockMap();
        for (var k = 0; k < 80 * 20; k++)
        {
            var truth = k * Second / 80;
            var mapped = map.Map(unchecked(uint.MaxValue - 5_000_000u + (uint)(truth / 1000)), truth + ShortestDelay);
            Assert.InRange(mapped - truth, 0, 2 * ShortestDelay);
        }
    }

    [Fact]
    public void Instants_rise_and_do_not_lie_after_their_arrival()
    {
        var random = new Random(7);
        var map = new DeviceClockMap();
        var (last, arrived) = (long.MinValue, 0L);
        for (var k = 0; k < 5000; k++)
        {
            var truth = k * Second / 320;
            arrived = Math.Max(arrived, truth + ShortestDelay + random.NextInt64(16_000_000));
            var mapped = map.Map(Device(truth, 30), arrived);
            // Samples that came together are kept in order by a nanosecond each.
            Assert.True(mapped > last && mapped <= arrived + 1000);
            last = mapped;
        }
    }

    private const long ShortestDelay = 1_000_000;

    private static uint Device(long truth, double ppm) => unchecked((uint)(123_456_789 + (long)(truth * (1 + ppm * 1e-6) / 1000)));

    // A USB adapter hands over what it has every 16 ms.
    private static long Burst(long truth) => (truth + 15_999_999) / 16_000_000 * 16_000_000 + ShortestDelay;
}
