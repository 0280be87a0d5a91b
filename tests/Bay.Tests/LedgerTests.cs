using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Bay.Tests;

/// <summary>One daemon a ledger, however the one before ended; and an entry that was altered costs itself alone, by name.</summary>
[Trait("needs", "bay")]
public class LedgerTests
{
    [Fact]
    public void A_second_daemon_on_the_same_ledger_is_turned_away_and_told_who_has_it_until_that_one_is_gone()
    {
        using var bay = new BayRig();
        string[] another = ["--bay", bay.BayFile, "--page-port", $"{FreePorts.Next()}", "--grpc-port", $"{FreePorts.Next()}", "--mqtt-port", $"{FreePorts.Next()}"];
        using (var second = new ChildProcess("ScaleLink.Daemon", "scalelinkd.dll", another))
        {
            Assert.True(second.WaitForExit(Wait.Patience), second.Said);
            Assert.Equal(2, second.ExitCode);
            Assert.Contains("SL-364", second.Said);
            Assert.Contains($"process {bay.Daemon.Process.Id} on {Environment.MachineName}", second.Said);
            Assert.DoesNotContain("   at ", second.Said);
        }

        // The first has not noticed anything, and its lock ends with it even when it is killed.
        bay.WaitLive();
        bay.Daemon.Process.Kill();
        bay.RestartDaemon();
        bay.WaitLive();
    }

    [Fact]
    public void An_altered_zero_leaves_its_pad_without_load_and_the_others_as_they_were()
    {
        using var bay = new BayRig();
        bay.Zero();
        bay.Daemon.Dispose();
        // The last one out takes the write-ahead log in; a kill leaves that to the next.
        var ledger = Path.Combine(Path.GetDirectoryName(bay.BayFile)!, "ledger.db");
        Assert.False(File.Exists(ledger + "-wal"), "the log was not taken in");
        Alter(ledger, "\"SerialNumber\":\"SLP-1001\"");
        bay.RestartDaemon();

        Wait.Until(() => bay.Daemon.Pad("LF").Faults.Any(f => f.Code == "SL-363"), Wait.Patience, "the entry is named");
        var fault = bay.Daemon.Pad("LF").Faults.First(f => f.Code == "SL-363");
        Assert.Contains("(zero of SLP-1001)", fault.Message);
        Assert.Contains("altered", fault.Message);
        Wait.Until(() => bay.Daemon.Pads.ListPads(new ListPadsRequest()).Pads.All(p => p.Corner == Corner.Lf ? p.Zero is null : p.Zero is not null), Wait.Patience, "LF alone has no zero");
        // Nothing needs a restart to go on: a new zero makes loads again.
        bay.Zero();
        Assert.NotNull(bay.Daemon.Pad("LF").Zero);
    }

    [Fact]
    public void What_holds_behind_a_damage_counts_again_once_somebody_has_taken_it_over()
    {
        using var bay = new BayRig();
        bay.WaitLive();
        // One entry a pad, in this order: those that were taken before a pad was refused would lie in front of the damage.
        foreach (var corner in new[] { Corner.Lf, Corner.Rf, Corner.Lr, Corner.Rr })
            Wait.Until(() => bay.Daemon.Control.ZeroPads(new ZeroPadsRequest { Who = "test", Corners = { corner } }).Results.All(r => r.Zero is not null), Wait.Patience, $"{corner} zeroed");
        bay.Daemon.Dispose();
        var ledger = Path.Combine(Path.GetDirectoryName(bay.BayFile)!, "ledger.db");
        // Two beside each other: neither can be told to be altered alone, and the chain ends there.
        Alter(ledger, "\"SerialNumber\":\"SLP-1001\"");
        Alter(ledger, "\"SerialNumber\":\"SLP-1002\"");
        bay.RestartDaemon();
        Wait.Until(() => bay.Daemon.Pad("LF").Faults.Any(f => f.Code == "SL-361"), Wait.Patience, "the damage is told");
        var told = Regex.Match(bay.Daemon.Pad("LF").Faults.Single(f => f.Code == "SL-361").Message, "of which ([0-9]+) hold by themselves");
        Assert.InRange(int.Parse(told.Groups[1].Value, CultureInfo.InvariantCulture), 2, 3);
        Wait.Until(() => bay.Daemon.Pads.ListPads(new ListPadsRequest()).Pads.All(p => p.Zero is null), Wait.Patience, "no pad has a zero");

        Assert.Contains("SL-364", TakeOver(bay, expected: 2));
        bay.Daemon.Dispose();
        Assert.Contains($"{told.Groups[1].Value} entries", TakeOver(bay, expected: 0));
        Assert.Contains("SL-366", TakeOver(bay, expected: 2));
        bay.RestartDaemon();
        bay.WaitLive();
        Wait.Until(() => bay.Daemon.Pads.ListPads(new ListPadsRequest()).Pads.All(p => p.Zero is not null == (p.Corner is Corner.Lr or Corner.Rr)), Wait.Patience, "LR and RR have their zeros again");
        Assert.Contains("SL-368", bay.Daemon.Process.Said);
    }

    private static string TakeOver(BayRig bay, int expected)
    {
        using var run = new ChildProcess("ScaleLink.Daemon", "scalelinkd.dll", "--bay", bay.BayFile, "--take-over", "Kim");
        Assert.True(run.WaitForExit(Wait.Patience), run.Said);
        Assert.True(run.ExitCode == expected, run.Said);
        return run.Said;
    }

    private static void Alter(string file, string text)
    {
        var bytes = File.ReadAllBytes(file);
        var at = bytes.AsSpan().IndexOf(Encoding.UTF8.GetBytes(text));
        Assert.True(at > 0, $"{text} is not in the ledger");
        // Wherever it stands: a pad that was refused at first makes all four be zeroed once more.
        for (; at > 0; at = bytes.AsSpan().IndexOf(Encoding.UTF8.GetBytes(text)))
            bytes[at + text.Length - 2] = (byte)'9';
        File.WriteAllBytes(file, bytes);
    }
}
