using ScaleLink.Client.Doctor;
using ScaleLink.Probing.Ports;

namespace Client.Tests.Doctor;

/// <summary>What the doctor sees of ports and adapters, on machines laid out for it.</summary>
public sealed class PortChecksTests : IDisposable
{
    private readonly Machine _machine = new();

    public static bool IsLinux => OperatingSystem.IsLinux();

    public PortChecksTests() => Assert.SkipUnless(IsLinux, "The system is asked about its ports on Linux only.");

    public void Dispose() => _machine.Dispose();

    [Fact]
    public void A_sound_port_passes_every_check()
    {
        var port = _machine.Plug(latencyMs: 1, properties: "ID_MM_DEVICE_IGNORE=1");
        _machine.Start(41, "dotnet", port.Plain, "/usr/bin/dotnet scalelinkd.dll --bay bay.toml");
        _machine.Start(42, "ModemManager");
        var findings = Check(port.ByPath);
        Assert.All(findings, f => Assert.True(f.Outcome == Outcome.Pass, $"{f}"));
        Assert.Equal(["port", "permission", "holder", "latency", "name", "modem probing", "braille service"], findings.Select(f => f.Check));
        Assert.Contains("Only scalelinkd (process 41)", Of(findings, "holder").Message);
    }

    [Fact]
    public void A_port_that_is_not_there_is_told_and_nothing_more()
    {
        var finding = Assert.Single(Check(Path.Combine(_machine.Tree.Dev, "ttyUSB7")));
        Assert.Equal("SL-451", finding.Wrong?.Code);
    }

    [Fact]
    public void Another_program_on_the_port_is_named()
    {
        var port = _machine.Plug();
        _machine.Start(77, "minicom", port.Plain);
        _machine.Start(78, "bash");
        AssertFails(Check(port.ByPath), "holder", "SL-453", "minicom (process 77)");
    }

    [Fact]
    public void Two_daemons_on_one_port_are_one_too_many()
    {
        var port = _machine.Plug();
        _machine.Start(41, "scalelinkd", port.Plain);
        _machine.Start(42, "scalelinkd", port.Plain);
        AssertFails(Check(port.ByPath), "holder", "SL-453", "process 42");
    }

    [Theory]
    [InlineData("ModemManager", "modem probing")]
    [InlineData("brltty", "braille service")]
    public void A_service_that_takes_adapters_is_told(string service, string check)
    {
        var port = _machine.Plug();
        _machine.Start(9, service);
        AssertFails(Check(port.ByPath), check, "SL-454", service);
    }

    [Theory]
    [InlineData(16, false)]
    [InlineData(2, true)]
    [InlineData(null, true)]
    public void The_latency_timer_is_looked_at_where_there_is_one(int? ms, bool passes)
    {
        var port = _machine.Plug(latencyMs: ms);
        var finding = Of(Check(port.ByPath), "latency");
        Assert.Equal(passes, finding.Outcome == Outcome.Pass);
        if (!passes)
            Assert.Contains("latency_timer", finding.Wrong!.Remedy);
    }

    [Fact]
    public void A_plain_name_is_told_with_the_one_that_stays()
    {
        var port = _machine.Plug();
        AssertFails(Check(port.Plain), "name", "SL-457", "order of plugging in");
        Assert.Contains(port.ByPath, Of(Check(port.Plain), "name").Wrong!.Remedy);
    }

    [Fact]
    public void A_by_id_name_is_good_for_one_adapter_and_bad_for_two_that_say_the_same()
    {
        var port = _machine.Plug(serial: "A1");
        Assert.Equal(Outcome.Pass, Of(Check(port.ById), "name").Outcome);
        var twin = _machine.Plug(serial: "A1");
        AssertFails(Check(twin.ById), "name", "SL-456", "ttyUSB0 says the same");
        AssertFails(Check(_machine.Plug(serial: null).ById), "name", "SL-456", "no serial number");
    }

    [Fact]
    public void Without_names_every_adapter_is_found_once_by_its_stable_name()
    {
        var (first, second) = (_machine.Plug("A"), _machine.Plug("B"));
        Assert.Equal([first.ByPath, second.ByPath], SerialPorts.Adapters(_machine.Tree).Select(p => p.Asked));
    }

    private List<CheckResult> Check(string port) => [.. new PortChecks(_machine.Tree).Of(SerialPorts.Of(port))];

    private static CheckResult Of(List<CheckResult> findings, string check) => Assert.Single(findings, f => f.Check == check);

    private static void AssertFails(List<CheckResult> findings, string check, string code, string said)
    {
        var failed = Assert.Single(findings, f => f.Check == check);
        Assert.Equal((Outcome.Fail, code), (failed.Outcome, failed.Wrong!.Code.Text));
        Assert.Contains(said, failed.Message);
        Assert.NotEmpty(failed.Wrong!.Remedy.ToString());
    }
}
