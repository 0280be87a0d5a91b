using Microsoft.Extensions.Time.Testing;
using ScaleLink.Daemon.Faces.Mqtt.Broker;

namespace Daemon.Tests.Faces.Mqtt.Broker;

public class SilenceTests
{
    private readonly FakeTimeProvider _time = new();
    private bool _hasUnread;
    private int _ended;

    [Fact]
    public void Each_packet_begins_the_time_anew()
    {
        using var silence = Start();
        silence.Allow(TimeSpan.FromSeconds(15));
        _time.Advance(TimeSpan.FromSeconds(14.9));
        silence.Heard();
        _time.Advance(TimeSpan.FromSeconds(14.9));
        Assert.Equal(0, _ended);
        _time.Advance(TimeSpan.FromSeconds(0.1));
        Assert.Equal(1, _ended);
    }

    [Fact]
    public void Bytes_that_wait_to_be_read_are_no_silence()
    {
        using var silence = Start();
        silence.Allow(TimeSpan.FromSeconds(15));
        _hasUnread = true;
        _time.Advance(TimeSpan.FromSeconds(15));
        _hasUnread = false;
        _time.Advance(TimeSpan.FromSeconds(14.9));
        Assert.Equal(0, _ended);
        _time.Advance(TimeSpan.FromSeconds(0.1));
        Assert.Equal(1, _ended);
    }

    [Fact]
    public void Any_silence_may_be_allowed()
    {
        using var silence = Start();
        silence.Allow(TimeSpan.FromSeconds(10));
        silence.Allow(Timeout.InfiniteTimeSpan);
        silence.Heard();
        _time.Advance(TimeSpan.FromDays(30));
        Assert.Equal(0, _ended);
    }

    private Silence Start() => new(_time, () => _hasUnread, () => _ended++);
}
