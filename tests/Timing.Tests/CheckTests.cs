using System.Diagnostics;
using Shared.Rig;

namespace Timing.Tests;

/// <summary>The check of a bay file as a program: it answers in time, whatever lies at the path.</summary>
[Trait("needs", "bay")]
public sealed class CheckTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory();

    private string Path => System.IO.Path.Combine(_folder.FullName, "bay.toml");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void A_pipe_that_nobody_writes_to_is_told_in_time()
    {
        MakePipe();
        using var check = Check();
        Assert.True(check.WaitForExit(Wait.Patience));
        Assert.Equal(2, check.ExitCode);
        Assert.Contains("SL-026", check.Said);
    }

    [Fact]
    public void A_pad_without_a_sensitivity_is_good_and_named()
    {
        File.WriteAllText(Path, "bay = \"unit6\"\n[[pads]]\ncorner = \"LF\"\nlink = \"tcp://127.0.0.1:9\"\n[[pads]]\ncorner = \"RF\"\nlink = \"tcp://127.0.0.1:10\"\nkg_per_count = 0.001\n");
        using var check = Check();
        Assert.True(check.WaitForExit(Wait.Patience));
        Assert.True(check.ExitCode == 0, check.Said);
        Assert.Contains("LF has no kg_per_count: it gives no load until its first calibration", check.Said);
        Assert.DoesNotContain("RF has no", check.Said);
    }

    [Fact]
    public void SIGTERM_ends_a_check_at_once()
    {
        MakePipe();
        using var check = Check();
        Assert.False(check.WaitForExit(TimeSpan.FromSeconds(1)));
        Signals.Send(check.Id, "-TERM");
        Assert.True(check.WaitForExit(TimeSpan.FromSeconds(2)), "It is still at work.");
        // 128 and the signal's number, as a shell tells it.
        Assert.Equal(143, check.ExitCode);
    }

    [Theory]
    [InlineData("bay = \"unit6\"\nx = ", "[", 400_000, "SL-023")]
    [InlineData("bay = \"unit6\"\nx = ", "{a=", 300_000, "SL-023")]
    [InlineData("bay = \"unit6\"\n", "[[pads]]\ncorner = \"LF\"\nlink = \"tcp://h:1\"\n", 20_000, "SL-023")]
    [InlineData("", "\u001b[31m=\n", 100_000, "SL-002")]
    public void A_file_that_is_meant_badly_gets_a_short_answer(string head, string part, int times, string code)
    {
        File.WriteAllText(Path, head + string.Concat(Enumerable.Repeat(part, times)));
        using var check = Check();
        Assert.True(check.WaitForExit(Wait.Patience));
        Assert.Equal(2, check.ExitCode);
        Assert.Contains(code, check.Said);
        Assert.InRange(check.Said.Split('\n').Length, 1, 60);
        Assert.DoesNotContain('\u001b', check.Said);
    }

    private ChildProcess Check() => new("ScaleLink.Daemon", "scalelinkd.dll", "--bay", Path, "--check");

    private void MakePipe()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows has no named pipes of this kind.");
        using var make = Process.Start("mkfifo", [Path]);
        make.WaitForExit();
    }
}
