using System.Runtime.Versioning;
using System.Text.Json;
using CarOnPads.Ports;
using Client.Tests.Bay;
using Client.Tests.Terminal;
using ScaleLink.Client;

namespace Client.Tests.Doctor;

/// <summary>The command as a whole: on a real bay, without a daemon, and as a user who may not open the port.</summary>
[UnsupportedOSPlatform("windows")]
[Collection(Alone.Name)]
public class DoctorCommandTests(RealBay bay) : IClassFixture<RealBay>
{
    public static bool Can => RealBay.HasPseudoTerminals;

    [Fact(Skip = RealBay.WhyNot, SkipUnless = nameof(Can))]
    public async Task On_a_bay_with_empty_pads_and_no_zero_only_the_zero_is_missed()
    {
        var (code, output, error) = await bay.Run("doctor", "--json", "--seconds", "2");
        Assert.Empty(error);
        using var json = JsonDocument.Parse(output);
        var findings = json.RootElement.GetProperty("findings").EnumerateArray().ToList();
        string Result(string check, string subject) => findings.Single(f => f.GetProperty("check").GetString() == check && f.GetProperty("subject").GetString()!.EndsWith(subject, StringComparison.Ordinal)).GetProperty("result").GetString()!;
        foreach (var corner in new[] { "LF", "RF", "LR", "RR" })
        {
            foreach (var check in new[] { "rate", "gaps", "converter range", "converter life" })
                Assert.Equal("pass", Result(check, corner));
            Assert.Equal("left_out", Result("noise", corner));
            Assert.Equal("pass", Result("port", $"ports/{corner}"));
        }

        Assert.Equal(1, code);
        Assert.Equal(["SL-341"], findings.Where(f => f.GetProperty("result").GetString() == "fail").Select(f => f.GetProperty("code").GetString()).Distinct());
    }

    [Fact(Skip = RealBay.WhyNot, SkipUnless = nameof(Can))]
    public async Task Without_a_daemon_it_says_what_it_left_out()
    {
        using var terminal = new PseudoTerminal();
        var output = new StringWriter();
        var code = await CommandLine.Run(["doctor", terminal.SlavePath, "--daemon", "http://127.0.0.1:9"], Shells.Redirected(output), TestContext.Current.CancellationToken);
        Assert.Equal(1, code);
        Assert.Matches("FAIL +daemon .* \\(SL-420\\)", output.ToString());
        Assert.Matches($"pass +port +{terminal.SlavePath}", output.ToString());
        Assert.Contains("Without the daemon left out: faults, rate, gaps", output.ToString());
    }

    // Root passes every permission check, so this runs as somebody else.
    [Fact(Skip = RealBay.WhyNot, SkipUnless = nameof(Can))]
    public void Without_the_right_to_the_port_the_group_is_named()
    {
        using var terminal = new PseudoTerminal();
        File.SetUnixFileMode(terminal.SlavePath, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead | UnixFileMode.GroupWrite);
        var said = OrdinaryUser.Run("doctor", terminal.SlavePath, "--daemon", "http://127.0.0.1:9");
        Assert.Matches("FAIL +permission .* This user is not in the group .* \\(SL-452\\)", said);
        Assert.Contains("sudo usermod -aG ", said);
    }
}
