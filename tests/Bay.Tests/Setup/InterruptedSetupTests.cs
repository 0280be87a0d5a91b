using ScaleLink.Api.V1;
using Shared.Rig;

namespace Bay.Tests.Setup;

/// <summary>Setting up is interrupted: another daemon has the ports, a cable is pulled while people step on pads, the daemon dies, the power goes just when the file is written.</summary>
[Trait("needs", "bay")]
public class InterruptedSetupTests
{
    [Fact]
    public void Nothing_that_ends_it_half_way_leaves_a_bay_half_set_up()
    {
        using var rig = new SetupRig("LF=pad-frames,RF=pad-frames,LR=pad-frames,RR=pad-frames");
        rig.Search();
        rig.StandOn("LF");
        SearchedByAnother(rig);

        // The one that is asked for is pulled: that is told at once, the others are heard, and it goes on where it was.
        rig.Simulator.Do("""{"do":"unplug","corner":"RF"}""");
        Wait.Until(() => Of(rig, "RF").Silence?.Code is "SL-475" or "SL-471", Wait.Patience, () => $"the pulled cable is named; {rig.Now()}");
        Assert.Null(Of(rig, "LR").Silence);
        Assert.Equal(Corner.Rf, rig.Now().Awaiting);
        rig.Simulator.Do("""{"do":"replug","corner":"RF"}""");
        Wait.Until(() => Of(rig, "RF") is { Silence: null, Ready: true }, Wait.Patience, () => $"it is heard again; {rig.Now()}");
        rig.StandOn("RF");
        Assert.Equal(Corner.Lr, rig.Now().Awaiting);

        // What was placed is not kept anywhere yet: it is asked for again, from the beginning, and the ports are free.
        rig.KillAndStartAgain();
        Wait.Until(() => rig.TryNow() is { Stage: SetupStage.Waiting }, Wait.Patience, () => $"it sets up again. {rig.Daemon.Said}");
        Assert.False(File.Exists(rig.BayFile));
        rig.Search();
        foreach (var (corner, place) in Simulator.Corners.Zip(Corners))
            rig.Place(Serial(corner), place);

        rig.Write("unit6", 600);
        rig.KillAndStartAgain();
        Wait.Until(() => rig.IsBayLive(), Wait.Patience, () => $"what was written is a bay. {rig.Daemon.Said}");
    }

    private static Corner[] Corners => [Corner.Lf, Corner.Rf, Corner.Lr, Corner.Rr];

    private static string Serial(string corner) => $"SLP-100{Array.IndexOf(Simulator.Corners, corner) + 1}";

    private static FoundDevice Of(SetupRig rig, string corner) => rig.Now().Devices.Single(d => d.Id == Serial(corner));

    // Somebody has started a second one by mistake: it takes no bytes from the first, not even as the superuser.
    private static void SearchedByAnother(SetupRig rig)
    {
        using var other = new SetupRig(beside: rig);
        other.Control.SearchDevices(new SearchDevicesRequest { Ports = { Simulator.Corners.Select(rig.Port) }, Who = "Ben" });
        Wait.Until(() => other.Now().Ports is { Count: 4 } all && all.All(p => p.Trouble?.Code == "SL-108"), Wait.Patience, () => $"the holder is named; {other.Now()}");
        Assert.Contains($"process {rig.Daemon.Id} ", other.Now().Ports[0].Trouble.Message);
        Assert.All(rig.Now().Devices, d => Assert.Null(d.Silence));
    }
}
