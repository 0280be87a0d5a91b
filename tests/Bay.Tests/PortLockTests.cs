using Google.Protobuf.Collections;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Bay.Tests;

/// <summary>One daemon a port. Two that read one would each get a part of its bytes; the superuser may open a port that is taken.</summary>
public class PortLockTests
{
    private static readonly TimeSpan Soon = TimeSpan.FromSeconds(30);

    [Fact]
    public void A_port_of_another_daemon_is_refused_by_name_and_taken_by_itself_once_that_one_is_killed()
    {
        using var bay = new BayRig();
        bay.WaitLive();
        var file = Path.Combine(Path.GetDirectoryName(bay.BayFile)!, "second.toml");
        File.WriteAllText(file, File.ReadAllText(bay.BayFile).Replace("\"unit6\"", "\"unit7\"").Replace("\"ledger.db\"", "\"second.db\""));
        var port = FreePorts.Next();
        using var second = new DaemonProcess(file, port, "--page-port", $"{FreePorts.Next()}", "--grpc-port", $"{port}", "--mqtt-port", $"{FreePorts.Next()}");

        IsRefused(second, $"another ScaleLink daemon: process {bay.Daemon.Process.Id} on {Environment.MachineName}, bay unit6, since ");
        // The first has not noticed anything.
        Assert.All(Pads(bay.Daemon), p => Assert.Equal((PadState.Live, 1ul), (p.State, p.Counters.Opened)));
        bay.Daemon.Process.Kill();
        Wait.Until(() => Pads(second).All(p => p.State == PadState.Live), Soon, "the second daemon has the pads");
        Assert.DoesNotContain(Pads(second).SelectMany(p => p.Faults), f => f.Code == "SL-108");

        // And the other way round.
        bay.RestartDaemon();
        IsRefused(bay.Daemon, $"process {second.Process.Id} on {Environment.MachineName}, bay unit7, since ");
        second.Dispose();
        bay.WaitLive();
    }

    private static void IsRefused(DaemonProcess daemon, string by)
    {
        Wait.Until(() => Pads(daemon).All(p => p.Faults.Any(f => f.Code == "SL-108")), Soon, () => $"each pad is refused; {string.Join(", ", Pads(daemon).SelectMany(p => p.Faults).Select(f => f.Message))}");
        Assert.All(Pads(daemon), p => Assert.Contains(by, p.Faults.Single(f => f.Code == "SL-108").Message));
    }

    private static RepeatedField<Pad> Pads(DaemonProcess daemon) => daemon.Pads.ListPads(new ListPadsRequest()).Pads;
}
