using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Measure;

namespace Daemon.Tests.Bay;

public class SmallRulesTests
{
    private const long Ms = 1_000_000;

    [Fact]
    public void Missed_and_repeated_samples_are_counted_across_the_wrap()
    {
        var track = new SequenceTrack();
        Assert.True(track.Accept(uint.MaxValue - 1));
        Assert.True(track.Accept(1));
        Assert.Equal(2, track.Missed);
        Assert.False(track.Accept(1));
        Assert.False(track.Accept(0));
        Assert.True(track.Accept(2));
        Assert.Equal((2L, 2L), (track.Missed, track.Repeated));
    }

    [Fact]
    public void A_numbering_that_starts_anew_is_no_loss()
    {
        var track = new SequenceTrack();
        track.Accept(4_000_000);
        Assert.True(track.Accept(0));
        Assert.Equal((0L, 0L), (track.Missed, track.Repeated));
    }

    [Theory]
    [InlineData(80, 500)]
    [InlineData(1000, 500)]
    [InlineData(5, 1000)]
    public void Silence_is_the_longer_of_five_periods_and_half_a_second(double rate, int limitMs)
    {
        var watch = new SilenceWatch();
        var silentAt = 0;
        for (var ms = 0; ms <= 2000 && silentAt == 0; ms += 10)
            silentAt = watch.Tick(ms * Ms, rate) ? ms : 0;
        Assert.InRange(silentAt, limitMs, limitMs + 20);
    }

    [Fact]
    public void A_daemon_that_was_held_up_condemns_no_pad()
    {
        var watch = new SilenceWatch();
        watch.Tick(0, 80);
        watch.Heard();
        Assert.False(watch.Tick(60_000 * Ms, 80));
        Assert.False(watch.Tick(60_010 * Ms, 80));
    }

    [Fact]
    public void A_wheel_comes_back_later_than_it_left()
    {
        var rule = new RaisedRule(10);
        Assert.Equal(4, rule.Add(Corners.Same(14)).Count);
        Assert.Empty(rule.Add(Corners.Same(16)));
        Assert.Empty(rule.Add(Corners.Same(11)));
        Assert.Equal([Corner.RR], rule.Add(new Corners(250, 250, 250, 9)));
        Assert.Equal([Corner.RR], rule.Add(new Corners(250, 250, 250, 14)));
    }

    [Fact]
    public void A_slow_reader_loses_the_oldest_and_is_told()
    {
        var all = new Broadcast<int>();
        using var slow = all.Subscribe(2);
        using var quick = all.Subscribe(100);
        for (var k = 0; k < 10; k++)
            all.Publish(k);
        Assert.Equal(8, slow.Dropped);
        Assert.Equal(0, quick.Dropped);
        Assert.True(slow.Items.TryRead(out var first));
        Assert.Equal(8, first);
    }

    [Fact]
    public void An_angle_goes_with_its_sensor()
    {
        var tilt = new Tilt();
        tilt.Add(1, 2, 0);
        tilt.Add(1, null, 12 * Ms);
        Assert.Equal(1, tilt.Pitch);
        Assert.Null(tilt.Roll);
    }
}
