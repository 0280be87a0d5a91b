using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Runtime;

namespace Daemon.Tests.Bay;

/// <summary>When a car has come to another rest. Common practice, no published source.</summary>
public class RestTests
{
    private readonly LiveBay _bay = new([]);
    private long _seq;

    [Fact]
    public void A_touch_does_not_make_another_rest_and_a_settle_does()
    {
        Publish(BayVerdict.Incomplete, 0);
        Publish(BayVerdict.Settled, 3);
        Assert.Equal(3 * Nanoseconds.PerSecond, _bay.Rest.SinceNs);
        Publish(BayVerdict.Disturbed, 10);
        Publish(BayVerdict.Settled, 10.6);
        Assert.Equal(3 * Nanoseconds.PerSecond, _bay.Rest.SinceNs);
        Publish(BayVerdict.Disturbed, 20);
        Publish(BayVerdict.Settling, 22);
        Publish(BayVerdict.Settled, 23);
        Assert.Equal(23 * Nanoseconds.PerSecond, _bay.Rest.SinceNs);
    }

    [Fact]
    public void A_rest_that_nobody_watched_the_car_come_to_says_so()
    {
        Publish(BayVerdict.Incomplete, 0);
        Publish(BayVerdict.Moving, 1);
        Publish(BayVerdict.Settled, 3);
        Assert.False(_bay.Rest.WasSeen);
        Publish(BayVerdict.Moving, 10);
        Publish(BayVerdict.Settled, 13);
        Assert.Equal(new CarRest(13 * Nanoseconds.PerSecond, WasSeen: true), _bay.Rest);
        Publish(BayVerdict.Incomplete, 20);
        Publish(BayVerdict.Settling, 22);
        Publish(BayVerdict.Settled, 23);
        Assert.False(_bay.Rest.WasSeen);
        // Off the pads: it has moved, whatever a gap has hidden.
        Publish(BayVerdict.Incomplete, 30);
        Publish(BayVerdict.Raised, 31);
        Publish(BayVerdict.Settled, 34);
        Assert.True(_bay.Rest.WasSeen);
    }

    private void Publish(BayVerdict verdict, double seconds) => _bay.Publish(new BayReading
    {
        Seq = ++_seq, AtNs = (long)(seconds * Nanoseconds.PerSecond), Verdict = verdict, Corners = [], Remark = "",
    });
}
