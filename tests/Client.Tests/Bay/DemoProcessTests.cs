namespace Client.Tests.Bay;

/// <summary>The demo as its user starts it.</summary>
[Trait("needs", "bay")]
public class DemoProcessTests
{
    public static bool Can => OperatingSystem.IsLinux();

    [Fact(Skip = "Looks for processes in /proc.", SkipUnless = nameof(Can))]
    public async Task Cross_weight_converges_and_nothing_is_left_behind()
    {
        using var demo = new ClientProcess(["demo", "--plain", "--seconds", "120", "--seed", "1", .. DemoTraces.FreePorts]);
        var folder = await DemoTraces.Folder(demo);
        Assert.Equal(2, DemoTraces.Users(folder).Count);
        var (code, error) = await demo.End(TimeSpan.FromSeconds(150));
        Assert.True(code == 0, string.Join('\n', demo.Lines) + error);
        Assert.Matches("Done: cross weight (49|50)\\.\\d+ % ± 0\\.\\d+ % is on target after \\d+ adjustments?", demo.Lines[^1]);
        Assert.Empty(DemoTraces.Users(folder));
        Assert.False(Directory.Exists(folder));
    }
}
