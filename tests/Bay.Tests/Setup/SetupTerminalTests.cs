using ScaleLink.Api.V1;
using Shared.Rig;

namespace Bay.Tests.Setup;

/// <summary>A newcomer at a terminal with four pads nobody has described, by the guide alone: no file is edited by hand.</summary>
[Trait("needs", "bay")]
public class SetupTerminalTests(ITestOutputHelper output)
{
    // The long form calibrates all four pads, the short one the slave, whose registers were found by its load.
    private static readonly string[] Calibrated = Environment.GetEnvironmentVariable("SCALELINK_LONG") == "1" ? Simulator.Corners : ["LR"];

    [Fact]
    public void A_newcomer_comes_from_unknown_pads_to_calibrated_loads_by_the_guide_alone()
    {
        using var rig = new SetupRig("LF=pad-frames,RF=text,LR=modbus,RR=pad-frames", isDaemonStarted: false);
        using var program = new ChildProcess("ScaleLink.Client", "scalelink.dll", [
            "setup", "--bay", rig.BayFile, "--daemon", $"http://127.0.0.1:{rig.GrpcPort}", "--page-port", $"{rig.PagePort}", "--mqtt-port", $"{rig.MqttPort}", "--who", "Ada",
            "--ports", .. Simulator.Corners.Select(rig.Port)]);
        var newcomer = new TerminalNewcomer(rig, program, Calibrated);
        newcomer.Until(line => line.Contains("scalelinkd --bay", StringComparison.Ordinal));
        output.WriteLine($"{newcomer.Entered} lines entered, {rig.Stepped} pads stepped on, {Calibrated.Length} calibrated");
        output.WriteLine(string.Join('\n', newcomer.Heard));

        var pads = new Pads.PadsClient(rig.Channel).ListPads(new ListPadsRequest()).Pads;
        Assert.All(pads.Where(p => Calibrated.Contains(p.Corner.ToString().ToUpperInvariant())), p => Assert.NotNull(p.Zero));
        foreach (var corner in Calibrated)
        {
            rig.Simulator.Do($$"""{"do":"mass","corner":"{{corner}}","kg":200,"at_once":true}""");
            Pad? pad = null;
            Wait.Until(() => (pad = new Pads.PadsClient(rig.Channel).ListPads(new ListPadsRequest()).Pads.Single(p => p.Corner.ToString().Equals(corner, StringComparison.OrdinalIgnoreCase))) is { Calibrated: true, LoadKg.Estimate: > 199.5 and < 200.5 }, Wait.Patience, () => $"{pad}");
        }

        Assert.Equal("Heron", new ScaleLink.Api.V1.Cars.CarsClient(rig.Channel).GetCar(new GetCarRequest()).Name);
        newcomer.Until(line => line.Contains(Calibrated.Length == 4 ? "raised" : "incomplete", StringComparison.Ordinal));
    }
}
