using ScaleLink.Daemon.Pipeline;
using ScaleLink.Daemon.Publishing;

namespace Daemon.Tests.Publishing;

/// <summary>When a car has come to another rest. Common practice, no published source.</summary>
public class RestTests
{
    private readonly LiveBay _bay = new([]);
    private long _seq;

    [Fact]
    public void A_touch_does_not_make_another_rest_and_a_ritual_does()
    {
        Publish(BayVerdict.Incomplete, 0);
        Publish(BayVerdict.Settled, 3);
        Assert.Equal(3 * Nanoseconds.PerSecond, _bay.RestSinceNs);
        Publish(BayVerdict.Disturbed, 10);
        Publish(BayVerdict.Settled, 10.6);
        Assert.Equal(3 * Nanoseconds.PerSecond, _bay.RestSinceNs);
        Publish(BayVerdict.Disturbed, 20);
        Publish(BayVerdict.Settling, 22);
        Publish(BayVerdict.Settled, 23);
        Assert.Equal(23 * Nanoseconds.PerSecond, _bay.RestSinceNs);
    }

    private void Publish(BayVerdict verdict, double seconds) => _bay.Publish(new BayReading
    {
        Seq = ++_seq, AtNs = (long)(seconds * Nanoseconds.PerSecond), Verdict = verdict, Corners = [], Remark = "",
    });
}
