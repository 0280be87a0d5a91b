using ScaleLink.Api.V1;
using ScaleLink.Measure;

namespace Client.Tests.Readings;

/// <summary>One verdict: in a session a live reading claims no more than the session does.</summary>
public class SeenLoadsTests
{
    [Fact]
    public void What_settles_differ_by_is_in_the_uncertainty_of_one()
    {
        // u = 0.05 of the reading, 0.12 between settles known from 4: JCGM 100:2008, 5.1.2 and G.4.1, worked by hand.
        var loads = Readouts.Settled(50.1, 0.05 * 1.959964);
        var seen = Session(0.12, 4).Seen(loads).CrossWeightPercent.AsValue;
        Assert.Equal(50.1, seen.Estimate);
        Assert.Equal(0.13, seen.StandardUncertainty!.Value, 9);
        Assert.Equal(4 * Math.Pow(0.13 / 0.12, 4), seen.DegreesOfFreedom!.Value, 9);
        // The message itself stays what the daemon said.
        Assert.Equal(0.05, loads.CrossWeightPercent.StandardUncertainty, 9);
    }

    [Fact]
    public void A_single_settle_near_the_edge_is_on_target_by_itself_and_not_in_the_session()
    {
        var loads = Readouts.Settled(50.1, 0.05);
        Assert.Equal(Aim.Within, loads.Aim);
        Assert.Equal(Aim.TooCloseToTell, Session(0.1, 3).Seen(loads).Aim);
        Assert.Equal(Aim.High, Session(0.1, 3).Seen(Readouts.Settled(52)).Aim);
    }

    [Fact]
    public void Where_nothing_is_known_or_claimed_the_loads_stay_as_they_are()
    {
        var loads = Readouts.Settled();
        Assert.Same(loads, new Session().Seen(loads));
        var moving = Readouts.Moving();
        Assert.Same(moving, Session(0.1, 3).Seen(moving));
    }

    [Fact]
    public void All_settles_together_speak_until_something_is_turned_or_the_car_stands_elsewhere()
    {
        var session = Session(0.1, 3);
        Assert.Same(session.Standing, session.StandsNow(session.Seen(Readouts.Settled(50.1))));
        Assert.Null(session.StandsNow(session.Seen(Readouts.Settled(51))));
        session.OpenAdjustments.Add(new Adjustment());
        Assert.Null(session.StandsNow(session.Seen(Readouts.Settled(50.1))));
        session.OpenAdjustments.Clear();
        session.State = SessionState.Naming;
        Assert.Null(session.StandsNow(session.Seen(Readouts.Settled(50.1))));
    }

    private static Session Session(double repeatability, double freedom) => new()
    {
        State = SessionState.Planning,
        Standing = new Standing { CrossWeightPercent = Readouts.Measured(50, 0.3), RepeatabilityPercent = repeatability, RepeatabilityDegreesOfFreedom = freedom, Verdict = AimVerdict.TooCloseToTell },
    };
}
