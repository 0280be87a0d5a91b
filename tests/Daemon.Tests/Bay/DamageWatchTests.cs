using ScaleLink.Daemon.Bay;

namespace Daemon.Tests.Bay;

public class DamageWatchTests
{
    private const long Ms = 1_000_000;

    // At 80 frames a second: 1 bit in 10 000 spoils 4 % of frames of 50 bytes.
    [Fact]
    public void A_few_per_cent_of_damage_are_told_within_two_seconds_and_end_after_three_clean_ones()
    {
        var watch = new DamageWatch("messages arrived damaged.");
        var (now, good, bad) = (0L, 0L, 0L);
        bool Step(bool isDamaged)
        {
            now += 10 * Ms;
            good += now % (12 * Ms) == 0 ? 1 : 0;
            bad += isDamaged && now % (330 * Ms) == 0 ? 1 : 0;
            return watch.Tick(bad, good, now)?.IsBad ?? false;
        }

        for (var k = 0; k < 500; k++)
            Assert.False(Step(isDamaged: false));
        Assert.Contains(true, Enumerable.Range(0, 200).Select(_ => Step(isDamaged: true)));
        var last = Enumerable.Range(0, 600).Select(_ => Step(isDamaged: false)).ToList().FindLastIndex(told => told);
        Assert.InRange(last * 10, 2000, 3300);
    }

    [Fact]
    public void A_rare_bad_frame_is_not_told()
    {
        var watch = new DamageWatch("messages arrived damaged.");
        for (var second = 0; second < 600; second++)
            Assert.Null(watch.Tick(second / 20, 80 * second, second * 1000 * Ms));
    }
}
