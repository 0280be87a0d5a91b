using System.Runtime.Versioning;
using CarOnPads.Ports;
using CarOnPads.Runtime;

namespace CarOnPads.Tests.Ports;

[UnsupportedOSPlatform("windows")]
public sealed class PseudoTerminalPortTests : IDisposable
{
    readonly string _directory = Directory.CreateTempSubdirectory("pads-").FullName;

    public PseudoTerminalPortTests() => Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows has no pseudo-terminals of this kind.");

    public void Dispose() => Directory.Delete(_directory, recursive: true);

    [Fact]
    public void The_name_stays_the_same_across_pulling_and_replugging()
    {
        using var port = new PseudoTerminalPort(_directory, "LF");
        Assert.Equal(Path.Combine(_directory, "LF"), port.Address);
        using var before = new SlaveReader(port.Address);
        Assert.True(port.HasReader);

        port.Unplug();
        Assert.True(before.HungUp);
        Assert.Empty(Directory.EnumerateFileSystemEntries(_directory));
        port.Write([1, 2]);
        Assert.Equal(2, port.LostBytes);

        port.Replug();
        using var after = new SlaveReader(port.Address);
        port.Write([0x11, 0x0D, 0x03]);
        Assert.Equal([0x11, 0x0D, 0x03], after.Read(3));
        Assert.Equal([port.Address], Directory.EnumerateFileSystemEntries(_directory));
    }

    [Fact]
    public void The_name_is_gone_when_the_port_is_disposed()
    {
        var port = new PseudoTerminalPort(_directory, "RR");
        port.Dispose();
        port.Dispose();
        Assert.Empty(Directory.EnumerateFileSystemEntries(_directory));
    }

    [Fact]
    public void A_link_left_behind_is_taken_over_and_a_later_owner_keeps_it()
    {
        var first = new PseudoTerminalPort(_directory, "LR");
        using var second = new PseudoTerminalPort(_directory, "LR");
        first.Dispose();
        using var reader = new SlaveReader(second.Address);
        second.Write([9]);
        Assert.Equal([9], reader.Read(1));
    }

    [Fact]
    public void A_file_that_is_no_link_is_left_alone()
    {
        var path = Path.Combine(_directory, "RF");
        File.WriteAllText(path, "mine");
        var refusal = Assert.Throws<SimulatorException>(() => new PseudoTerminalPort(_directory, "RF"));
        Assert.Equal("CP-301", refusal.Code);
        Assert.Equal("mine", File.ReadAllText(path));
    }
}
