using Grpc.Core;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Bay.Tests.Setup;

/// <summary>From four pads nobody has described to a bay, over the API alone.</summary>
[Trait("needs", "bay")]
public class SetupTests
{
    [Fact]
    public void Four_unknown_pads_become_a_bay_by_stepping_on_each()
    {
        using var rig = new SetupRig("LF=pad-frames,RF=text,LR=modbus,RR=pad-frames");
        Assert.Equal(SetupStage.Waiting, rig.Now().Stage);
        var refused = Assert.Throws<RpcException>(() => rig.Control.WriteBayFile(new WriteBayFileRequest { Bay = "unit6", Who = "Ada" }));
        Assert.Contains("SL-485", refused.Status.Detail);

        var searched = rig.Search();
        Assert.Equal(4, searched.Devices.Count);
        Assert.Equal(Corner.Lf, searched.Awaiting);
        foreach (var corner in Simulator.Corners)
        {
            rig.StandOn(corner);
            Wait.Until(() => rig.Now().Devices.Any(d => d.Corner.ToString().Equals(corner, StringComparison.OrdinalIgnoreCase)), Wait.Patience, () => $"{corner} is known; {rig.Now()}");
        }

        // Whoever steps on a pad that has its corner changes nothing.
        Assert.Equal(Corner.Unspecified, rig.Now().Awaiting);
        refused = Assert.Throws<RpcException>(() => rig.Control.WriteBayFile(new WriteBayFileRequest { Bay = "unit6", Who = "Ada" }));
        Assert.Contains("SL-486", refused.Status.Detail);
        refused = Assert.Throws<RpcException>(() => rig.Control.WriteBayFile(new WriteBayFileRequest { Bay = "unit 6", CapacityKg = 600, Who = "Ada" }));
        Assert.Contains("SL-0", refused.Status.Detail);

        var written = rig.Control.WriteBayFile(new WriteBayFileRequest { Bay = "unit6", CapacityKg = 600, Who = "Ada" });
        Assert.Equal(written.Text, File.ReadAllText(rig.BayFile));
        foreach (var at in new[] { 0, 2, 4, 6 })
            Assert.Contains($"at = {at}\ntype = \"s32\"", written.Text);
        Assert.DoesNotContain("at = 8", written.Text);
        Assert.DoesNotContain("kg_per_count", written.Text);

        var pads = new Pads.PadsClient(rig.Channel);
        Wait.Until(() => AllLive(pads), Wait.Patience, () => $"the bay has begun. {rig.Daemon.Said}");
        Assert.Equal("SLP-1001", pads.ListPads(new ListPadsRequest()).Pads[0].SerialNumber);
    }

    private static bool AllLive(Pads.PadsClient pads)
    {
        try
        {
            return pads.ListPads(new ListPadsRequest()).Pads is { Count: 4 } all && all.All(p => p.State == PadState.Live);
        }
        catch (RpcException)
        {
            return false;
        }
    }
}
