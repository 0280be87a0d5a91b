using Microsoft.Extensions.Time.Testing;
using ScaleLink.Api.V1;
using ScaleLink.Client.Age;

namespace Client.Tests.Age;

public class AgeJudgeTests
{
    private readonly FakeTimeProvider _time = new();
    private readonly DaemonClock _clock;
    private readonly AgeJudge<Loads> _judge;

    public AgeJudgeTests()
    {
        _clock = new DaemonClock(_time);
        _judge = new AgeJudge<Loads>(_clock, loads => loads.Stamp);
        See(1_000_000_000, Readouts.Run);
    }

    [Theory]
    [InlineData(0, Freshness.Live)]
    [InlineData(750, Freshness.Live)]
    [InlineData(751, Freshness.Held)]
    [InlineData(60_000, Freshness.Held)]
    [InlineData(60_001, Freshness.Absent)]
    public void A_value_is_live_up_to_its_permitted_age_then_held_then_gone(int milliseconds, Freshness expected)
    {
        _time.Advance(TimeSpan.FromMilliseconds(milliseconds));
        Assert.Equal(expected, _judge.Judge(Readouts.Settled(), true, null).Freshness);
    }

    [Fact]
    public void An_absent_view_carries_no_message_that_could_be_drawn_by_mistake()
    {
        _time.Advance(TimeSpan.FromMinutes(2));
        Assert.Null(_judge.Judge(Readouts.Settled(), true, null).Message);
    }

    [Fact]
    public void Without_a_clock_nothing_is_live()
    {
        var judge = new AgeJudge<Loads>(new DaemonClock(_time), loads => loads.Stamp);
        Assert.NotEqual(Freshness.Live, judge.Judge(Readouts.Settled(), true, null).Freshness);
    }

    [Fact]
    public void A_value_of_the_run_before_is_gone()
    {
        See(5, "run-b");
        Assert.Equal(Freshness.Absent, _judge.Judge(Readouts.Settled(), false, null).Freshness);
    }

    [Fact]
    public void Trouble_is_told_even_while_the_last_value_is_still_live()
    {
        var trouble = new Diagnostic(Code.Read("SL-420"), "away", "start it");
        var view = _judge.Judge(Readouts.Settled(), false, trouble);
        Assert.Equal((Freshness.Live, trouble), (view.Freshness, view.Trouble));
    }

    private void See(long ns, string run) =>
        _clock.Take(new GetClockResponse { MonotonicNs = ns, StartId = run }, _time.GetTimestamp(), _time.GetTimestamp());
}
