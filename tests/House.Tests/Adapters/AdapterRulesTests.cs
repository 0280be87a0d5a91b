using System.Diagnostics;
using Shared;

namespace House.Tests.Adapters;

/// <summary>The device rule sets what it should, for enrolled adapters and nobody else.</summary>
public class AdapterRulesTests
{
    private const string Rules = "70-scalelink-adapters.rules";
    private static readonly string Text = RepositoryRoot.Read("packaging", "udev", Rules);

    private static readonly Dictionary<string, string> Enrolled = new() { ["ATTRS{idVendor}"] = "0403", ["ATTRS{idProduct}"] = "6001", ["ATTRS{serial}"] = "AB0CD1EF", ["KERNELS"] = "1-1.1", ["SUBSYSTEMS"] = "usb" };
    private static readonly Dictionary<string, string> Stranger = new(Enrolled) { ["ATTRS{serial}"] = "ZZ9", ["KERNELS"] = "1-1.4" };

    [Theory]
    [InlineData("#ATTRS")]
    [InlineData("#SUBSYSTEMS")]
    public void An_enrolled_adapter_gets_group_latency_and_peace(string example)
    {
        var rules = new DeviceRules(Enrol(example));
        var port = rules.Apply(Port(Enrolled));
        Assert.Equal(("dialout", "0660", "1"), (port["GROUP"], port["MODE"], port["ENV{ID_MM_DEVICE_IGNORE}"]));
        Assert.Equal("1", rules.Apply(new Device("add", "usb-serial", ["latency_timer"], Enrolled))["ATTR{latency_timer}"]);
        Assert.Equal("1", rules.Apply(new Device("add", "usb", [], Enrolled))["ENV{ID_MM_DEVICE_IGNORE}"]);
        Assert.DoesNotContain("ATTR{latency_timer}", rules.Apply(new Device("add", "usb-serial", [], Enrolled)).Keys);
    }

    [Theory]
    [InlineData("#ATTRS")]
    [InlineData("#SUBSYSTEMS")]
    public void A_strangers_adapter_is_not_touched(string example)
    {
        var rules = new DeviceRules(Enrol(example));
        foreach (var subsystem in new[] { "usb", "usb-serial", "tty" })
            Assert.Empty(rules.Apply(new Device("add", subsystem, ["latency_timer"], Stranger)));
        Assert.Empty(rules.Apply(new Device("add", "block", [], Enrolled)));
        Assert.Empty(rules.Apply(new Device("remove", "tty", [], Enrolled)));
    }

    [Fact]
    public void As_delivered_nobody_is_enrolled() => Assert.Empty(new DeviceRules(Text).Apply(Port(Enrolled)));

    // Since systemd 254.
    [Fact]
    public void Udev_itself_finds_nothing_wrong_with_it()
    {
        const string Program = "/usr/bin/udevadm";
        Assert.SkipUnless(File.Exists(Program) && Run(Program, "verify", "--help").Code == 0, "udevadm verify is not installed.");
        var (code, said) = Run(Program, "verify", RepositoryRoot.File("packaging", "udev", Rules));
        Assert.True(code == 0, said);
    }

    private static string Enrol(string example) => string.Join('\n', Text.Split('\n').Select(l => l.StartsWith(example, StringComparison.Ordinal) ? l[1..] : l));

    private static Device Port(Dictionary<string, string> adapter) => new("add", "tty", [], new Dictionary<string, string> { ["KERNELS"] = "ttyUSB0" }, adapter);

    private static (int Code, string Said) Run(string program, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        var error = process.StandardError.ReadToEndAsync();
        var said = process.StandardOutput.ReadToEnd() + error.Result;
        process.WaitForExit();
        return (process.ExitCode, said);
    }
}
