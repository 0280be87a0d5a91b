using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Faces;

namespace Daemon.Tests.Faces;

public class PublishingTests
{
    private const long Ms = 1_000_000;

    [Theory]
    [InlineData(20, 200)]
    [InlineData(10, 100)]
    [InlineData(5, 50)]
    [InlineData(0.5, 5)]
    public void A_reader_gets_the_pace_it_asked_for(double rate, int expectedIn10Seconds)
    {
        var pace = new Pace(rate);
        var sent = Enumerable.Range(1, 200).Count(k => pace.IsDue(Reading(k * 50 * Ms, BayVerdict.Moving)));
        Assert.InRange(sent, expectedIn10Seconds - 1, expectedIn10Seconds + 1);
    }

    [Fact]
    public void A_change_of_verdict_does_not_wait_its_turn()
    {
        var pace = new Pace(0.1);
        Assert.True(pace.IsDue(Reading(50 * Ms, BayVerdict.Settled)));
        Assert.False(pace.IsDue(Reading(100 * Ms, BayVerdict.Settled)));
        Assert.True(pace.IsDue(Reading(150 * Ms, BayVerdict.Incomplete)));
    }

    private static BayReading Reading(long atNs, BayVerdict verdict) => new() { Seq = 1, AtNs = atNs, Verdict = verdict, Corners = [], Remark = "" };
}
