using System.Runtime.Versioning;
using ScaleLink.Probing.Ports;
using ScaleLink.Probing.Recognition;
using ScaleLink.Probing.Search;
using ScaleLink.Protocol.Modbus;
using Device = Probing.Tests.AnsweringTerminal.Device;

namespace Probing.Tests.Search;

/// <summary>Slaves that are slow, refuse, keep silent or come back as an echo, on real pseudo-terminals.</summary>
[UnsupportedOSPlatform("windows")]
public class BusSearchTests
{
    [Fact]
    public async Task Every_slave_of_a_line_is_found_the_slow_one_and_the_last_too()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Pseudo-terminals of Linux.");
        using var line = new AnsweringTerminal(new Device(3), new Device(77) { After = TimeSpan.FromMilliseconds(130), HasInput = false }, new Device(200) { At = 256, Registers = 5 }, new Device(247) { After = TimeSpan.FromMilliseconds(130), Registers = 1 });
        var found = await Slaves(line, new SearchSettings { Asking = Asking.Only });

        Assert.Equal([3, 77, 200, 247], found.Select(f => f.Slave));
        Assert.Equal(["holding registers 0 to 9", "input registers 0 to 9"], found[0].Tables.Select(t => t.Describe().Split(':')[0]));
        Assert.Equal([new RegisterNumber(0, "s32", false)], found[0].Readable!.Numbers);
        Assert.Equal("input registers refused with exception 1", found[1].Tables[1].Describe());
        Assert.InRange(found[1].ReplyWithin.TotalMilliseconds, 130, 500);
        Assert.Equal((256, 5), ((int)found[2].Readable!.At, found[2].Readable!.Count));
        Assert.Equal((1, ModbusFunction.ReadHoldingRegisters), (found[3].Readable!.Count, found[3].Readable!.Table));
    }

    [Fact]
    public async Task A_slave_that_keeps_silent_where_it_should_refuse_is_read_as_far_as_it_goes()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Pseudo-terminals of Linux.");
        using var line = new AnsweringTerminal(new Device(9) { IsSilentOnRefusal = true, Registers = 6 }) { Echoes = true };
        var found = await Slaves(line, new SearchSettings { Asking = Asking.Only, Slaves = [8, 9, 10] });
        Assert.Equal(6, Assert.Single(found).Readable!.Count);
    }

    [Fact]
    public async Task A_second_device_of_one_address_is_told_of()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Pseudo-terminals of Linux.");
        using var line = new AnsweringTerminal(new Device(5) { HasTwin = true }, new Device(6));
        var found = await Slaves(line, new SearchSettings { Asking = Asking.Only, Slaves = [5, 6] });
        Assert.Equal([(5, true), (6, false)], found.Select(f => ((int)f.Slave, f.HasTwin)));
        Assert.Contains(found[0].Remarks, r => r.Contains("second device", StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_time_that_is_given_is_kept_and_what_was_not_asked_is_said()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Pseudo-terminals of Linux.");
        using var line = new AnsweringTerminal();
        var finding = await Find(line, new SearchSettings { Asking = Asking.Only, AskingAtMost = TimeSpan.FromSeconds(3), TerminalsHaveRates = true, Baud = 9600 });
        var nothing = Assert.IsType<FoundNothing>(Assert.Single(finding.Found));
        Assert.Contains("1 to 247 at no setting in whole", nothing.Why, StringComparison.Ordinal);
        Assert.Contains("9600 none, 9600 even, 9600 odd", nothing.ToDo[0], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nobody_is_asked_where_somebody_speaks()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Pseudo-terminals of Linux.");
        using var speaking = new SpeakingTerminal([.. " 12.5 kg\r\n"u8]);
        var told = new List<string>();
        var probe = new PortProbe(speaking.Path, new SearchSettings { Listening = TimeSpan.FromSeconds(2), Asking = Asking.WhereSilent }, TimeProvider.System, new SystemTree(), new Doings(told));
        Assert.IsType<FoundText>(Assert.Single(probe.Find(TestContext.Current.CancellationToken).Found));
        Assert.DoesNotContain(told, doing => doing.StartsWith("asks", StringComparison.Ordinal));
        using var silent = new AnsweringTerminal(new Device(5));
        var asked = await Slaves(silent, new SearchSettings { Listening = TimeSpan.FromSeconds(1), Asking = Asking.WhereSilent, Slaves = [4, 5] });
        Assert.Equal(5, Assert.Single(asked).Slave);
    }

    private static async Task<PortFinding> Find(AnsweringTerminal line, SearchSettings settings) =>
        await new PortSearch(settings, TimeProvider.System, new SystemTree()).Search([line.Path], null, TestContext.Current.CancellationToken).SingleAsync(TestContext.Current.CancellationToken);

    private static async Task<List<FoundSlave>> Slaves(AnsweringTerminal line, SearchSettings settings) => [.. (await Find(line, settings)).Found.Cast<FoundSlave>()];

    private sealed class Doings(List<string> all) : IProgress<SearchProgress>
    {
        public void Report(SearchProgress value) => all.Add(value.Doing);
    }
}
