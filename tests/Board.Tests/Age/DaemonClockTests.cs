using Microsoft.Extensions.Time.Testing;
using ScaleLink.Api.V1;
using ScaleLink.Board.Age;

namespace Board.Tests.Age;

/// <summary>Age is judged on the daemon's monotonic clock, whatever the wall clocks say.</summary>
public class DaemonClockTests
{
    private static readonly TimeSpan Second = TimeSpan.FromSeconds(1);
    private readonly FakeTimeProvider _time = new(DateTimeOffset.UnixEpoch.AddYears(30));
    private readonly DaemonClock _clock;

    public DaemonClockTests() => _clock = new DaemonClock(_time);

    [Fact]
    public void Age_is_never_too_young_and_too_old_by_the_round_trip_at_most()
    {
        // The daemon answers at 100 s, somewhere within a round trip of 40 ms.
        Ask(daemonSeconds: 100, roundTripMs: 40);
        _time.Advance(Second);
        Assert.InRange(_clock.AgeOf(At(100.5))!.Value.TotalMilliseconds, 500, 540);
    }

    [Fact]
    public void A_quicker_answer_takes_the_place_of_a_slow_one_and_not_the_other_way_round()
    {
        Ask(100, 2000);
        Ask(102, 10);
        Assert.Equal(10, _clock.RoundTrip!.Value.TotalMilliseconds);
        Ask(102.01, 2000);
        Assert.Equal(10, _clock.RoundTrip!.Value.TotalMilliseconds);
    }

    [Fact]
    public void Nothing_is_told_of_another_run()
    {
        Ask(100, 10);
        Assert.Null(_clock.AgeOf(new Stamp { StartId = "other", MonotonicNs = 1 }));
    }

    [Fact]
    public void A_value_from_the_future_puts_the_clock_uncertain()
    {
        Ask(100, 10);
        Assert.Null(_clock.AgeOf(At(200)));
        Assert.Null(_clock.StartId);
    }

    [Theory]
    [InlineData(0.5, Freshness.Live)]
    [InlineData(0.8, Freshness.Held)]
    [InlineData(59, Freshness.Held)]
    [InlineData(61, Freshness.Absent)]
    public void Values_grow_old(double seconds, Freshness freshness)
    {
        Ask(100, 0);
        var stamp = At(100);
        stamp.MaxAgeMs = 750;
        _time.Advance(TimeSpan.FromSeconds(seconds));
        var judged = AgeJudge.Judge(new Loads(), stamp, _clock);
        Assert.Equal(freshness, judged.Freshness);
        Assert.Equal(freshness != Freshness.Absent, judged.Message is not null);
    }

    [Fact]
    public void Before_the_clock_has_answered_nothing_is_live() =>
        Assert.Equal(Freshness.Held, AgeJudge.Judge(new Loads(), new Stamp { StartId = "run", MonotonicNs = 1, MaxAgeMs = 750 }, _clock).Freshness);

    private static Stamp At(double seconds) => new() { StartId = "run", MonotonicNs = (long)(seconds * 1e9) };

    private void Ask(double daemonSeconds, double roundTripMs)
    {
        var askedAt = _time.GetTimestamp();
        _time.Advance(TimeSpan.FromMilliseconds(roundTripMs));
        _clock.Take(new GetClockResponse { StartId = "run", MonotonicNs = (long)(daemonSeconds * 1e9) }, askedAt, _time.GetTimestamp());
    }
}
