using CsCheck;
using ScaleLink.Daemon.Bay;

namespace Daemon.Tests.Bay;

public class SampleRingTests
{
    private const long Ms = 1_000_000;

    [Fact]
    public void The_mean_of_a_straight_line_is_its_middle_whatever_the_instants() =>
        Gen.Long[1 * Ms, 90 * Ms].List[5, 60].Sample(steps =>
        {
            var ring = new SampleRing(128);
            long at = 0;
            foreach (var step in steps)
                ring.Add(at += step, 3.0 * at / Ms);
            var (from, to) = (ring.OldestNs + 1, ring.NewestNs - 1);
            Assert.Equal(3.0 * (from + to) / 2 / Ms, ring.MeanOver(from, to, 100 * Ms)!.Value, 1e-6);
        });

    [Fact]
    public void A_span_that_the_samples_do_not_cover_has_no_mean()
    {
        var ring = new SampleRing(16);
        Assert.Null(ring.MeanOver(0, 1, Ms));
        ring.Add(10, 1);
        ring.Add(20, 1);
        Assert.Null(ring.MeanOver(5, 15, Ms));
        Assert.Null(ring.MeanOver(15, 25, Ms));
        Assert.Equal(1, ring.MeanOver(10, 20, Ms));
    }

    [Fact]
    public void A_hole_is_no_load()
    {
        var ring = new SampleRing(16);
        foreach (var at in new[] { 0, 10, 300, 310 })
            ring.Add(at * Ms, 1);
        Assert.Null(ring.MeanOver(5 * Ms, 305 * Ms, 250 * Ms));
    }

    [Fact]
    public void The_oldest_samples_make_way()
    {
        var ring = new SampleRing(4);
        for (var k = 0; k < 10; k++)
            ring.Add(k, k);
        Assert.Equal([7.0, 8.0, 9.0], ring.Since(7));
        Assert.Equal((4, 6L, 9L), (ring.Count, ring.OldestNs, ring.NewestNs));
    }
}
