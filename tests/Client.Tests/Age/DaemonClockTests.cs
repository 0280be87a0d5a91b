using Microsoft.Extensions.Time.Testing;
using ScaleLink.Api.V1;

namespace Client.Tests.Age;

public class DaemonClockTests
{
    private const long Second = 1_000_000_000;
    private readonly OwnClocks _time = new();

    [Fact]
    public void Before_the_first_answer_no_age_is_known() => Assert.Null(new DaemonClock(_time).AgeOf(Readouts.Stamp()));

    [Fact]
    public void Age_is_counted_on_the_daemons_clock()
    {
        var clock = Asked(daemonNs: 100 * Second, roundTrip: TimeSpan.FromMilliseconds(10));
        _time.Advance(TimeSpan.FromSeconds(2));
        Assert.Equal(2.51, clock.AgeOf(Readouts.Stamp(99_500_000_000))!.Value.TotalSeconds, 3);
    }

    [Fact]
    public void A_value_that_waited_a_minute_in_a_buffer_is_a_minute_old_whatever_it_says_of_itself()
    {
        var clock = Asked(daemonNs: 100 * Second, roundTrip: TimeSpan.Zero);
        var stamp = Readouts.Stamp(100 * Second);
        stamp.AgeMs = 3;
        _time.Advance(TimeSpan.FromMinutes(1));
        Assert.Equal(60, clock.AgeOf(stamp)!.Value.TotalSeconds, 3);
    }

    [Theory]
    [InlineData(-20 * 365)]
    [InlineData(20 * 365)]
    public void Wall_clocks_that_are_wrong_by_years_change_nothing(int days)
    {
        var clock = Asked(daemonNs: 100 * Second, roundTrip: TimeSpan.Zero);
        var stamp = Readouts.Stamp(100 * Second);
        stamp.Time = Google.Protobuf.WellKnownTypes.Timestamp.FromDateTimeOffset(_time.GetUtcNow().AddDays(days));
        _time.Advance(TimeSpan.FromMilliseconds(300));
        Assert.Equal(0.3, clock.AgeOf(stamp)!.Value.TotalSeconds, 3);
    }

    [Fact]
    public void The_answer_with_the_shortest_round_trip_is_kept()
    {
        var clock = Asked(daemonNs: 100 * Second, roundTrip: TimeSpan.FromMilliseconds(2));
        var asked = _time.GetTimestamp();
        _time.Advance(TimeSpan.FromMilliseconds(400));
        // Answered 390 ms after the question left: counted from the question it would make values 390 ms too old.
        clock.Take(Answer(100 * Second + 392_000_000), asked, _time.GetTimestamp());
        Assert.Equal(0.402, clock.AgeOf(Readouts.Stamp(100 * Second))!.Value.TotalSeconds, 3);
    }

    [Fact]
    public void No_round_trip_makes_a_value_look_younger_than_it_is()
    {
        foreach (var wayOut in new[] { 0, 50, 250 })
        {
            var clock = new DaemonClock(_time);
            var asked = _time.GetTimestamp();
            _time.Advance(TimeSpan.FromMilliseconds(wayOut));
            var answer = Answer(100 * Second);
            _time.Advance(TimeSpan.FromMilliseconds(250 - wayOut));
            clock.Take(answer, asked, _time.GetTimestamp());
            var trueAge = (250 - wayOut) / 1000.0;
            Assert.InRange(clock.AgeOf(Readouts.Stamp(100 * Second))!.Value.TotalSeconds, trueAge, trueAge + 0.2501);
        }
    }

    [Fact]
    public void A_new_run_starts_afresh()
    {
        var clock = Asked(daemonNs: 5000 * Second, roundTrip: TimeSpan.Zero);
        clock.Take(new GetClockResponse { MonotonicNs = 3 * Second, StartId = "run-b" }, _time.GetTimestamp(), _time.GetTimestamp());
        Assert.Equal("run-b", clock.StartId);
        Assert.Null(clock.AgeOf(Readouts.Stamp(5000 * Second)));
        Assert.Equal(1, clock.AgeOf(Readouts.Stamp(2 * Second, "run-b"))!.Value.TotalSeconds, 3);
    }

    [Fact]
    public void A_value_of_an_unknown_run_is_questioned_and_the_clock_is_asked_again()
    {
        var clock = Asked(daemonNs: 100 * Second, roundTrip: TimeSpan.Zero);
        var uncertainties = 0;
        clock.Questioned += () => uncertainties++;
        Assert.Null(clock.AgeOf(Readouts.Stamp(1, "run-b")));
        Assert.Equal(1, uncertainties);
    }

    [Fact]
    public void A_machine_that_slept_does_not_trust_its_clock_until_it_has_asked_again()
    {
        var clock = Asked(daemonNs: 100 * Second, roundTrip: TimeSpan.Zero);
        var uncertainties = 0;
        clock.Questioned += () => uncertainties++;
        // The wall clock ran on for an hour, the monotonic one did not.
        _time.WallAhead = TimeSpan.FromHours(1);
        Assert.Null(clock.AgeOf(Readouts.Stamp(100 * Second)));
        Assert.Equal(1, uncertainties);
        clock.Take(Answer(3700 * Second), _time.GetTimestamp(), _time.GetTimestamp());
        Assert.Equal(3600, clock.AgeOf(Readouts.Stamp(100 * Second))!.Value.TotalSeconds, 3);
    }

    [Fact]
    public void A_value_from_the_future_proves_the_clock_wrong()
    {
        var clock = Asked(daemonNs: 100 * Second, roundTrip: TimeSpan.Zero);
        Assert.Null(clock.AgeOf(Readouts.Stamp(105 * Second)));
        Assert.Null(clock.StartId);
    }

    [Fact]
    public void An_answer_that_contradicts_the_kept_one_replaces_it_even_with_a_longer_round_trip()
    {
        var clock = Asked(daemonNs: 100 * Second, roundTrip: TimeSpan.FromMilliseconds(1));
        var asked = _time.GetTimestamp();
        _time.Advance(TimeSpan.FromMilliseconds(20));
        clock.Take(Answer(160 * Second), asked, _time.GetTimestamp());
        Assert.Equal(1.02, clock.AgeOf(Readouts.Stamp(159 * Second))!.Value.TotalSeconds, 3);
    }

    private DaemonClock Asked(long daemonNs, TimeSpan roundTrip)
    {
        var clock = new DaemonClock(_time);
        var asked = _time.GetTimestamp();
        _time.Advance(roundTrip);
        clock.Take(Answer(daemonNs), asked, _time.GetTimestamp());
        return clock;
    }

    private static GetClockResponse Answer(long ns) => new() { MonotonicNs = ns, StartId = Readouts.Run };

    private sealed class OwnClocks : FakeTimeProvider
    {
        public TimeSpan WallAhead { get; set; }

        public override DateTimeOffset GetUtcNow() => base.GetUtcNow() + WallAhead;

        public override long GetTimestamp() => base.GetUtcNow().Ticks;
    }
}
