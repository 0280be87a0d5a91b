using System.Text.Json.Nodes;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Bay.Tests;

/// <summary>Unknown devices are listened to, and the daemon takes what is proposed as it is.</summary>
[Trait("needs", "bay")]
public class ProbeTests
{
    [Fact]
    public void The_daemon_runs_on_the_proposals_for_pad_frames_text_and_a_slave()
    {
        var folder = Directory.CreateTempSubdirectory("scalelink-probe-");
        using var simulator = new Simulator(Path.Combine(folder.FullName, "ports"), "default", speak: "LF=pad-frames,RF=text,LR=modbus,RR=pad-frames");
        var ports = simulator.Ready["ports"]!;
        string[][] asked = [["LF"], ["RF", "--seconds", "2"], ["LR", "--modbus", "9,3"]];
        var probes = asked.Select(a => new ChildProcess("ScaleLink.Client", "scalelink.dll", ["probe", $"{ports[a[0]]}", "--corner", .. a, "--json"])).ToList();
        var reports = probes.Select(p => JsonNode.Parse(p.FirstLine(Wait.Patience))!).ToList();
        probes.ForEach(p => p.Dispose());

        Assert.Equal(["pad-frames", "text-lines", "modbus-rtu"], reports.Select(r => r["protocol"]!.GetValue<string>()));
        Assert.All(reports, r => Assert.Null(r["baud"]));
        Assert.Contains("SLP-1001, 4 cells", reports[0]["summary"]!.GetValue<string>());
        Assert.Contains("checksum = \"xor\"", reports[1]["proposal"]!.GetValue<string>());
        Assert.Contains("slave = 3", reports[2]["proposal"]!.GetValue<string>());

        var bayFile = Path.Combine(folder.FullName, "bay.toml");
        var grpc = FreePorts.Next();
        File.WriteAllText(bayFile, $"""
            bay = "unit6"
            [listen]
            page_port = {FreePorts.Next()}
            grpc_port = {grpc}
            [mqtt]
            broker = "off"

            {string.Join("\n\n", reports.Select(r => r["proposal"]!.GetValue<string>()))}
            """);
        using (var daemon = new DaemonProcess(bayFile, grpc))
            Wait.Until(() => daemon.Pads.ListPads(new ListPadsRequest()).Pads.All(p => p.State == PadState.Live), Wait.Patience, () => $"all live; {daemon.Pads.ListPads(new ListPadsRequest())}");
        folder.Delete(recursive: true);
    }
}
