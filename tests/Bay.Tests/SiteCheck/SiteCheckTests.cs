using Bay.Tests.Asking;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Bay.Tests.SiteCheck;

/// <summary>
/// Empty pads watched over real ports, with the sun on one of them, until a car comes. The truth is the simulator's own physics; limits are common practice, no published source.
/// </summary>
[Trait("needs", "bay")]
public class SiteCheckTests
{
    [Fact]
    public void A_watch_over_real_ports_sees_the_sun_ends_with_the_car_and_outlives_the_daemon()
    {
        using var bay = new BayRig("temperature,noise,thermometer-noise,offset,dead-load");
        bay.WaitLive();
        Assert.Equal("SL-590", new Calls(bay).Code(d => Control(d).StartSiteCheck(Start())));
        bay.Zero();
        Assert.Equal("SL-594", new Calls(bay).Code(d => Control(d).StartSiteCheck(new StartSiteCheckRequest { Minutes = double.NaN, Who = "crew" })));
        Assert.Equal("SL-594", new Calls(bay).Code(d => Control(d).StartSiteCheck(new StartSiteCheckRequest { TotalKg = -1, Who = "crew" })));
        Assert.Equal("SL-412", new Calls(bay).Code(d => Control(d).StartSiteCheck(new StartSiteCheckRequest())));
        bay.Simulator.Do("""{"do":"sun","corner":"RF","kelvin":40}""");
        var view = Control(bay.Daemon).StartSiteCheck(Start());
        Assert.Equal((2, "crew"), (view.Now.Minutes, view.Now.Who));
        Assert.Contains("chock the wheels", view.Caution);
        Wait.Until(() => (view = Ask(bay)).Now is { SoFar: not null, ElapsedS: > 18 }, Wait.Patience, "enough was seen");
        Assert.Equal("SL-592", new Calls(bay).Code(d => Control(d).StartSiteCheck(Start())));

        bay.Simulator.DoAndWait("""{"do":"lower"}""");
        Wait.Until(() => (view = Ask(bay)).Now is null, Wait.Patience, "the car ends the watch");
        var last = view.Last;
        Assert.Equal((SiteCheckEnding.Loaded, "SL-587", false, 1048.0), (last.Ending, last.Why.Code, last.TotalIsGuessed, last.TotalKg));
        // First order: 40 K (1 - exp(-t / 600 s)), metal at 20 degrees; what was seen ends before the car came.
        var sunny = last.Report.Pads[1];
        Assert.InRange(sunny.WarmedK, 0.6 * 40 * last.Report.Seconds / 600, 1.2 * 40 * last.Report.Seconds / 600);
        Assert.All(last.Report.Pads.Where(p => p.Corner != Corner.Rf), p => Assert.InRange(p.WarmedK, -0.2, 0.2));
        Assert.All(last.Report.Pads, p => Assert.Empty(p.Touches));
        Assert.False(last.Report.HasReadingPercent);
        Assert.Equal(7, last.Report.Parts.Count);

        bay.RestartDaemon();
        Assert.Equal(AsText(last), Ask(bay).Last);
        bay.WaitLive();
        Wait.Until(() => new Calls(bay).Code(d => Control(d).StartSiteCheck(Start())) == "SL-589", Wait.Patience, "refused under a car");
        Assert.Equal("SL-593", new Calls(bay).Code(d => Control(d).StopSiteCheck(new StopSiteCheckRequest { Who = "crew" })));
    }

    // On record a sentence is its text.
    private static SiteCheckRecord AsText(SiteCheckRecord told)
    {
        Assert.Contains(told.Report.Parts, p => p.TypedWords is not null);
        foreach (var part in told.Report.Parts)
            part.TypedWords = null;
        foreach (var finding in told.Report.Findings)
            finding.TypedMessage = null;
        return told;
    }

    private static StartSiteCheckRequest Start() => new() { Minutes = 2, TotalKg = 1048, Who = "crew" };

    private static SiteCheckView Ask(BayRig bay) => new SiteChecks.SiteChecksClient(bay.Daemon.Channel).GetSiteCheck(new GetSiteCheckRequest());

    private static SiteCheckControl.SiteCheckControlClient Control(DaemonProcess daemon) => new(daemon.Channel);
}
