using Shared.Rig;

namespace Bay.Tests;

/// <summary>The daemon refuses to start on a bad bay file or a taken port, and says everything at once.</summary>
[Trait("needs", "bay")]
public class StartTests
{
    [Fact]
    public void A_bad_bay_file_is_refused_with_every_mistake_in_it()
    {
        var path = Path.Combine(Directory.CreateTempSubdirectory().FullName, "bay.toml");
        File.WriteAllText(path, """
            bay = "unit6"
            [[pads]]
            corner = "LF"
            link = "/dev/no-such-port-1"
            [[pads]]
            corner = "LF"
            link = "/dev/no-such-port-1"
            baud = 12
            """);
        using var daemon = new ChildProcess("ScaleLink.Daemon", "scalelinkd.dll", "--bay", path);
        Assert.True(daemon.WaitForExit(Wait.Patience));
        Assert.Equal(2, daemon.ExitCode);
        foreach (var (line, code) in new[] { (4, "SL-101"), (7, "SL-101"), (7, "SL-009"), (7, "SL-010"), (7, "SL-013") })
            Assert.Contains(daemon.Said.Split('\n'), said => said.StartsWith($"{path}:{line}: ", StringComparison.Ordinal) && said.TrimEnd().EndsWith($"({code})", StringComparison.Ordinal));
        Assert.Contains("5 to correct", daemon.Said);
    }

    [Fact]
    public void A_taken_port_is_named_with_the_option_that_moves_it()
    {
        using var bay = new BayRig();
        // A ledger of its own: a shared one is refused before any port is.
        var other = bay.BayFile + ".other.toml";
        File.WriteAllText(other, File.ReadAllText(bay.BayFile).Replace("ledger.db", "other.db", StringComparison.Ordinal));
        foreach (var (option, free, code) in new[] { ("--page-port", bay.GrpcPort, "SL-402"), ("--mqtt-port", bay.MqttPort, "SL-403") })
        {
            string[] ports = option == "--page-port"
                ? ["--page-port", $"{free}", "--grpc-port", $"{FreePorts.Next()}", "--mqtt-port", $"{FreePorts.Next()}"]
                : ["--page-port", $"{FreePorts.Next()}", "--grpc-port", $"{FreePorts.Next()}", "--mqtt-port", $"{free}"];
            using var second = new ChildProcess("ScaleLink.Daemon", "scalelinkd.dll", ["--bay", other, .. ports]);
            Assert.True(second.WaitForExit(Wait.Patience), second.Said);
            Assert.Equal(2, second.ExitCode);
            Assert.Contains(code, second.Said);
            Assert.Contains(option, second.Said);
        }
    }

    [Fact]
    public void The_daemon_ends_with_the_program_that_started_it_and_a_zero_outlives_a_kill()
    {
        using var bay = new BayRig();
        bay.PutCarOn();
        var before = bay.Settled();
        bay.Daemon.Process.Kill();
        bay.RestartDaemon();
        var after = bay.Settled();
        Assert.NotEqual(before.Stamp.StartId, after.Stamp.StartId);
        Assert.Equal(before.TotalKg.Estimate, after.TotalKg.Estimate, 1);
    }
}
