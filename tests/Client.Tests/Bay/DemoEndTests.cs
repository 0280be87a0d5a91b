using System.Diagnostics;

namespace Client.Tests.Bay;

/// <summary>Every way a demo can end before its time.</summary>
[Trait("needs", "bay")]
public class DemoEndTests
{
    public static bool Can => OperatingSystem.IsLinux();

    [Fact(Skip = "Looks for processes in /proc.", SkipUnless = nameof(Can))]
    public async Task The_children_do_not_outlive_a_demo_that_is_killed()
    {
        using var demo = new ClientProcess(["demo", "--plain", .. DemoTraces.FreePorts]);
        var folder = await DemoTraces.Folder(demo);
        demo.Kill();
        await DemoTraces.NobodyUses(folder);
        Directory.Delete(folder, recursive: true);
    }

    [Fact(Skip = "Looks for processes in /proc.", SkipUnless = nameof(Can))]
    public async Task A_child_that_dies_ends_the_demo_with_a_word_about_it()
    {
        using var demo = new ClientProcess(["demo", "--plain", .. DemoTraces.FreePorts]);
        var folder = await DemoTraces.Folder(demo);
        Process.GetProcessById(DemoTraces.Users(folder).Single(u => u.Command.Contains("car-on-pads")).Id).Kill();
        var (code, error) = await demo.End(TimeSpan.FromSeconds(60));
        Assert.Equal(2, code);
        Assert.Matches(@"The simulator ended.* \(SL-433\)", error);
        Assert.Empty(DemoTraces.Users(folder));
        Assert.False(Directory.Exists(folder));
    }

    [Fact(Skip = "Looks for processes in /proc.", SkipUnless = nameof(Can))]
    public async Task Ctrl_c_ends_everything_and_is_no_success_before_the_target_is_reached()
    {
        using var demo = new ClientProcess(["demo", "--plain", .. DemoTraces.FreePorts]);
        var folder = await DemoTraces.Folder(demo);
        demo.Interrupt();
        var (code, error) = await demo.End(TimeSpan.FromSeconds(60));
        Assert.Equal(1, code);
        Assert.Contains("SL-435", error);
        Assert.Empty(DemoTraces.Users(folder));
        Assert.False(Directory.Exists(folder));
    }

    [Fact(Skip = "Sends a signal.", SkipUnless = nameof(Can))]
    public async Task Watch_ends_with_0_on_ctrl_c()
    {
        using var watch = new ClientProcess("watch", "--daemon", "http://127.0.0.1:9");
        await watch.LineWith("SL-420");
        watch.Interrupt();
        Assert.Equal(0, (await watch.End(TimeSpan.FromSeconds(60))).Code);
    }
}
