using System.Diagnostics;
using System.Text.RegularExpressions;

namespace Client.Tests.Bay;

/// <summary>The demo as its user starts it, and every way it can end.</summary>
public partial class DemoProcessTests
{
    private static readonly string[] FreePorts = ["--page-port", "0", "--grpc-port", "0", "--mqtt-port", "0"];

    public static bool Can => OperatingSystem.IsLinux();

    [Fact(Skip = "Looks for processes in /proc.", SkipUnless = nameof(Can))]
    public async Task Cross_weight_converges_and_nothing_is_left_behind()
    {
        using var demo = new ClientProcess(["demo", "--plain", "--seconds", "45", "--seed", "1", .. FreePorts]);
        var folder = await Folder(demo);
        Assert.Equal(2, Users(folder).Count);
        var (code, error) = await demo.End(TimeSpan.FromSeconds(60));
        Assert.True(code == 0, string.Join('\n', demo.Lines) + error);
        Assert.Matches("Done: cross weight (49|50)\\.\\d+ ±0\\.0\\d % is on target after \\d+ adjustments", demo.Lines[^1]);
        Assert.Empty(Users(folder));
        Assert.False(Directory.Exists(folder));
    }

    [Fact(Skip = "Looks for processes in /proc.", SkipUnless = nameof(Can))]
    public async Task The_children_do_not_outlive_a_demo_that_is_killed()
    {
        using var demo = new ClientProcess(["demo", "--plain", .. FreePorts]);
        var folder = await Folder(demo);
        demo.Kill();
        await NobodyUses(folder);
        Directory.Delete(folder, recursive: true);
    }

    [Fact(Skip = "Looks for processes in /proc.", SkipUnless = nameof(Can))]
    public async Task A_child_that_dies_ends_the_demo_with_a_word_about_it()
    {
        using var demo = new ClientProcess(["demo", "--plain", .. FreePorts]);
        var folder = await Folder(demo);
        Process.GetProcessById(Users(folder).Single(u => u.Command.Contains("car-on-pads")).Id).Kill();
        var (code, error) = await demo.End(TimeSpan.FromSeconds(30));
        Assert.Equal(2, code);
        Assert.Contains("SL-433: The simulator ended", error);
        Assert.Empty(Users(folder));
        Assert.False(Directory.Exists(folder));
    }

    [Fact(Skip = "Looks for processes in /proc.", SkipUnless = nameof(Can))]
    public async Task Ctrl_c_ends_everything_and_is_no_success_before_the_target_is_reached()
    {
        using var demo = new ClientProcess(["demo", "--plain", .. FreePorts]);
        var folder = await Folder(demo);
        demo.Interrupt();
        var (code, error) = await demo.End(TimeSpan.FromSeconds(20));
        Assert.Equal(1, code);
        Assert.Contains("SL-435", error);
        Assert.Empty(Users(folder));
        Assert.False(Directory.Exists(folder));
    }

    [Fact(Skip = "Sends a signal.", SkipUnless = nameof(Can))]
    public async Task Watch_ends_with_0_on_ctrl_c()
    {
        using var watch = new ClientProcess("watch", "--daemon", "http://127.0.0.1:9");
        await watch.LineWith("SL-420");
        watch.Interrupt();
        Assert.Equal(0, (await watch.End(TimeSpan.FromSeconds(10))).Code);
    }

    private static async Task<string> Folder(ClientProcess demo) => FolderPattern().Match(await demo.LineWith("gRPC http")).Groups[1].Value;

    private static async Task NobodyUses(string folder)
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(15));
        while (Users(folder).Count > 0)
            await Task.Delay(100, patience.Token);
    }

    // The children are those whose command line names the folder.
    private static List<(int Id, string Command)> Users(string folder)
    {
        var users = new List<(int, string)>();
        foreach (var entry in Directory.EnumerateDirectories("/proc"))
        {
            try
            {
                var command = File.ReadAllText(Path.Combine(entry, "cmdline")).Replace('\0', ' ');
                if (int.TryParse(Path.GetFileName(entry), out var id) && command.Contains(folder, StringComparison.Ordinal))
                    users.Add((id, command));
            }
            catch (IOException)
            {
                // It has ended in the meantime, or is no process.
            }
        }

        return users;
    }

    [GeneratedRegex(@"In (\S+): page")]
    private static partial Regex FolderPattern();
}
