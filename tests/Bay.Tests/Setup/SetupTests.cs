using Grpc.Core;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Bay.Tests.Setup;

/// <summary>What comes between while a bay is set up: two pads at once, a pad that has its corner already, a port that is held, a file that cannot be written.</summary>
[Trait("needs", "bay")]
public class SetupTests
{
    [Fact]
    public void What_comes_between_is_told_and_nothing_is_lost_by_it()
    {
        using var rig = new SetupRig("LF=pad-frames,RF=pad-frames,LR=text,RR=pad-frames");
        Assert.Equal(SetupStage.Waiting, rig.Now().Stage);
        Assert.Contains("SL-485", Refusal(() => rig.Write("unit6", 600)));
        rig.Control.SearchDevices(new SearchDevicesRequest { Ports = { Path.Combine(rig.Folder, "nobody") }, Who = "Ada" });
        Wait.Until(() => rig.Now().Ports is [{ Trouble.Code: "SL-471" }], Wait.Patience, () => $"a port that is not there is named; {rig.Now()}");

        rig.Search();
        // Somebody on each of two pads: neither is taken, and neither on the way off.
        rig.Step("LF", on: true);
        rig.Step("RR", on: true);
        Wait.Until(() => rig.Now().Devices.Count(d => d.Loaded) == 2, Wait.Patience, () => $"both are seen; {rig.Now()}");
        Thread.Sleep(3000);
        rig.Step("LF", on: false);
        Wait.Until(() => rig.Now().Note?.Code == "SL-483", Wait.Patience, () => $"two at once is told; {rig.Now()}");
        rig.Step("RR", on: false);
        Wait.Until(() => rig.Now().Devices.All(d => !d.Loaded && d.Corner == Corner.Unspecified), Wait.Patience, () => $"nothing is placed; {rig.Now()}");
        Thread.Sleep(4000);
        rig.StandOn("LF");
        rig.StandOn("LF");
        Wait.Until(() => rig.Now() is { Awaiting: Corner.Rf, Note.Code: "SL-484" }, Wait.Patience, () => $"that pad has its corner; {rig.Now()}");

        // By hand, as people do whose pad says nothing; what was placed stays when the ports are searched again.
        rig.Place("SLP-1002", Corner.Rf);
        rig.Place("SLP-1004", Corner.Rr);
        Assert.Contains("SL-482", Refusal(() => rig.Place("nobody", Corner.Lr)));
        rig.Place(rig.Port("LR"), Corner.Lr);
        Assert.Contains("SL-490", Refusal(() => rig.Write("unit6", 600)));
        rig.Control.SearchDevices(new SearchDevicesRequest { Ports = { Simulator.Corners.Select(rig.Port) }, Who = "Ada" });
        Assert.Contains("SL-480", Refusal(() => rig.Place("SLP-1002", Corner.Rf)));
        Wait.Until(() => rig.Now() is { Stage: SetupStage.Placing } now && now.Devices.All(d => d.Ready), Wait.Patience, () => $"searched again; {rig.Now()}");
        Assert.All(rig.Now().Devices, d => Assert.NotEqual(Corner.Unspecified, d.Corner));
        rig.StandOn("LR");

        Assert.Contains("SL-486", Refusal(() => rig.Write("unit6", null)));
        Assert.Contains("SL-007", Refusal(() => rig.Write("unit 6", 600)));
        File.WriteAllText(rig.BayFile, "somebody else's");
        Assert.Contains("SL-487", Refusal(() => rig.Write("unit6", 600)));
        Assert.Equal("somebody else's", File.ReadAllText(rig.BayFile));
        File.Delete(rig.BayFile);
        Directory.CreateDirectory($"{rig.BayFile}.new");
        Assert.Contains("SL-488", Refusal(() => rig.Write("unit6", 600)));
        Directory.Delete($"{rig.BayFile}.new");
        Assert.Equal(rig.Write("unit6", 600).Text, File.ReadAllText(rig.BayFile));
        Wait.Until(() => rig.IsBayLive(), Wait.Patience, () => $"the bay has begun. {rig.Daemon.Said}");
    }

    private static string Refusal(Action step) => Assert.Throws<RpcException>(step).Status.Detail;
}
