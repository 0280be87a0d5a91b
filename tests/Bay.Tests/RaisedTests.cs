using ScaleLink.Api.V1;
using Shared.Rig;

namespace Bay.Tests;

/// <summary>A car off the pads is a state of its own, never a small load.</summary>
[Trait("needs", "bay")]
public class RaisedTests
{
    [Fact]
    public void Jacked_up_the_car_has_no_loads_on_any_face()
    {
        using var bay = new BayRig();
        bay.PutCarOn();
        bay.Settled();
        bay.Simulator.DoAndWait("""{"do":"jack","corners":["LF","RF"],"mm":150}""");
        Wait.Until(() => bay.Daemon.Loads()?.Verdict == Verdict.Raised, Wait.Patience, "raised");
        var loads = bay.Daemon.Loads()!;
        Assert.All(loads.Corners, c => Assert.Null(c.LoadKg));
        Assert.Null(loads.CrossWeightPercent);
        Assert.Null(loads.TotalKg);
        Assert.Equal("Off the pads: LF, RF.", loads.Remark);

        bay.Simulator.DoAndWait("""{"do":"lower"}""");
        Assert.InRange(bay.Settled().TotalKg.Estimate, 1047, 1049);
    }

    [Fact]
    public void Without_a_zero_there_is_no_load()
    {
        using var bay = new BayRig();
        bay.WaitLive();
        Wait.Until(() => bay.Daemon.Loads()?.Corners.All(c => c.Faults.Any(f => f.Code == "SL-341")) == true, Wait.Patience, "no zero told");
        Assert.All(bay.Daemon.Loads()!.Corners, c => Assert.Null(c.LoadKg));
    }

    [Fact]
    public void A_pad_that_is_not_empty_or_not_quiet_is_not_zeroed()
    {
        using var bay = new BayRig();
        bay.Zero();
        bay.Simulator.Do("""{"do":"mass","corner":"LF","kg":40}""");
        Wait.Until(() => bay.Daemon.Pad("LF").LoadKg?.Estimate > 39, Wait.Patience, "mass on");
        Wait.Until(() => ZeroOf(bay, "SL-318"), Wait.Patience, "refused: not empty");
        bay.Simulator.Do("""{"do":"mass","corner":"LF","kg":0}""");
        Wait.Until(() => bay.Daemon.Pad("LF").LoadKg?.Estimate < 1, Wait.Patience, "mass off");
        bay.Zero();
    }

    private static bool ZeroOf(BayRig bay, string code)
    {
        var results = bay.Daemon.Control.ZeroPads(new ZeroPadsRequest { Who = "test", Corners = { Corner.Lf } }).Results;
        return Assert.Single(results).Refused?.Code == code;
    }
}
