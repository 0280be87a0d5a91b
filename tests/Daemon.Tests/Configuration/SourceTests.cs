using System.IO.Ports;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Ports;
using ScaleLink.Protocol.Modbus;
using ScaleLink.Protocol.PadFrames;
using ScaleLink.Protocol.Readings;
using ScaleLink.Protocol.TextLines;

namespace Daemon.Tests.Configuration;

/// <summary>Where numbers come from: slaves on a shared line, text, a tilt from elsewhere, and every mistake in them.</summary>
public class SourceTests
{
    private const string Shared = """
        bay = "unit6"
        [[pads]]
        corner = "LF"
        link = "tcp://127.0.0.1:7001"
        protocol = "modbus-rtu"
        parity = "even"
        slave = 1
        capacity_kg = 600
        [[pads.registers]]
        means = "load"
        at = 0
        type = "s32"
        [[pads.registers]]
        means = "status"
        at = 11
        type = "u16"
        table = "input"
        bits = "8 excitation, 9 converter"
        [[pads]]
        corner = "RF"
        link = "tcp://127.0.0.1:7001"
        protocol = "modbus-rtu"
        parity = "even"
        slave = 2
        capacity_kg = 600
        [[pads.registers]]
        means = "load"
        at = 0
        type = "f32"
        unit = "kg"
        word_order = "low-first"
        [[pads]]
        corner = "LR"
        link = "tcp://127.0.0.1:7003"
        protocol = "text-lines"
        pattern = 'W (?<load>[-+ 0-9.]+) kg'
        unit = "kg"
        capacity_kg = 500
        [pads.tilt]
        link = "tcp://127.0.0.1:7001"
        protocol = "modbus-rtu"
        parity = "even"
        slave = 13
        [[pads.tilt.registers]]
        means = "pitch"
        at = 0
        type = "s16"
        scale = 0.001
        [[pads.tilt.registers]]
        means = "roll"
        at = 1
        type = "s16"
        scale = 0.001

        """;

    [Fact]
    public void Slaves_share_a_line_and_a_tilt_comes_from_elsewhere()
    {
        var file = BayFile.Parse(Shared, "bay.toml");
        Assert.Empty(file.Mistakes);
        var pads = file.Configuration!.Pads;
        Assert.Equal([(byte)1, 2], pads.Take(2).Select(p => p.Source.Modbus!.Slave));
        Assert.Equal(Parity.Even, pads[0].Source.Parity);
        Assert.Equal((20, TimeSpan.FromMilliseconds(100)), (pads[0].Source.Modbus!.PollHz, pads[0].Source.Modbus!.ReplyTimeout));
        Assert.Equal([new StatusBit(8, PadStatus.ExcitationLow), new StatusBit(9, PadStatus.ConverterFault)], pads[0].Source.Modbus!.Map.Fields[1].Rule.Bits);
        Assert.Equal(
            [new RegisterBlock(ModbusFunction.ReadHoldingRegisters, 0, 2), new RegisterBlock(ModbusFunction.ReadInputRegisters, 11, 1)],
            pads[0].Source.Modbus!.Map.Blocks);
        Assert.Null(pads[0].KgPerCount);
        Assert.Equal((WordOrder.LowFirst, FieldUnits.MassStepKg), (pads[1].Source.Modbus!.Map.Fields[0].Order, pads[1].KgPerCount));
        Assert.Equal((LineEnd.ReturnOrFeed, null), (pads[2].Source.Text!.End, pads[2].Source.Text!.Pause));
        Assert.Equal((byte)13, pads[2].Tilt!.Modbus!.Slave);
        Assert.Equal(2, pads[2].Tilt!.Modbus!.Map.Fields.Count);
        Assert.Equal([600.0, 600, 500], pads.Select(p => p.CapacityKg!.Value));
    }

    [Theory]
    [InlineData("slave = 2", "slave = 1", "SL-017")]
    [InlineData("slave = 2", "slave = 0", "SL-006")]
    [InlineData("slave = 2", "", "SL-004")]
    [InlineData("slave = 2", "slave = 2\nbaud = 9600", "SL-018")]
    [InlineData("slave = 2", "slave = 2\nstop_bits = 2", "SL-018")]
    [InlineData("slave = 2", "slave = 2\ndata_bits = 7", "SL-006")]
    [InlineData("unit = \"kg\"\ncap", "data_bits = 6\ncap", "SL-006")]
    [InlineData("slave = 2", "slave = 2\npattern = 'x'", "SL-016")]
    [InlineData("capacity_kg = 500", "", "SL-004")]
    [InlineData("unit = \"kg\"\ncap", "line_end = \"pause\"\ncap", "SL-006")]
    [InlineData("unit = \"kg\"\ncap", "line_end = \"eol\"\ncap", "SL-006")]
    [InlineData("(?<load>", "(?<weight>", "SL-020")]
    [InlineData("(?<load>", "(?<pitch>", "SL-019")]
    [InlineData("'W (?", "'W ((?", "SL-020")]
    [InlineData("127.0.0.1:7003", "127.0.0.1:7001", "SL-010")]
    [InlineData("means = \"status\"", "means = \"weight\"", "SL-006")]
    [InlineData("means = \"status\"", "means = \"load\"", "SL-019")]
    [InlineData("means = \"status\"", "", "SL-004")]
    [InlineData("bits = \"8 ", "bits = \"88 ", "SL-006")]
    [InlineData("at = 11", "", "SL-004")]
    [InlineData("at = 0\ntype = \"s32\"", "at = 65535\ntype = \"s32\"", "SL-019")]
    [InlineData("means = \"roll\"", "means = \"temperature\"", "SL-019")]
    [InlineData("means = \"roll\"", "means = \"load\"", "SL-019")]
    [InlineData("[pads.tilt]\nlink", "[pads.tilt]\nslav = 3\nlink", "SL-005")]
    [InlineData("[[pads.registers]]\nmeans = \"load\"\nat = 0\ntype = \"f32\"", "[pads.registers]\nmeans = \"load\"\nat = 0\ntype = \"f32\"", "SL-003")]
    [InlineData("[pads.tilt]", "[[pads.tilt]]", "SL-003")]
    [InlineData("bay = \"unit6\"", "bay = \"unit6\"\n[pads.tilt]\nlink = \"tcp://h:1\"", "SL-002")]
    public void Every_mistake_has_its_code(string good, string bad, string code)
    {
        var at = Shared.IndexOf(good, StringComparison.Ordinal);
        Assert.True(at >= 0, good);
        var mistakes = BayFile.Parse(Shared[..at] + bad + Shared[(at + good.Length)..], "bay.toml").Mistakes;
        Assert.Contains(mistakes, m => m.Code == code);
        Assert.All(mistakes, m => Assert.True(m is { Line: > 0, Message.IsEmpty: false, Remedy.IsEmpty: false }));
    }

    [Fact]
    public void Characters_of_an_old_indicator_reach_the_port_as_written()
    {
        var file = BayFile.Parse("""
            bay = "unit6"
            [[pads]]
            corner = "LR"
            link = "COM3"
            baud = 4800
            parity = "even"
            data_bits = 7
            stop_bits = 2
            protocol = "text-lines"
            pattern = '(?<load>[-+ 0-9.]+)kg'
            unit = "kg"
            capacity_kg = 500
            """, "bay.toml");
        Assert.True(file.Configuration!.Pads[0].Source.TryFind(out var address, out _));
        Assert.Equal("4800 even 7 2", Assert.IsType<SerialAddress>(address).Line);
    }

    [Fact]
    public void Keys_of_another_protocol_are_not_passed_over_in_silence()
    {
        var mistakes = BayFile.Parse("""
            bay = "unit6"
            [[pads]]
            corner = "LF"
            link = "tcp://127.0.0.1:7001"
            slave = 4
            capacity_kg = 600
            [[pads.registers]]
            means = "load"
            at = 0
            type = "s32"
            """, "bay.toml").Mistakes;
        Assert.Equal(["5 SL-016", "6 SL-016", "7 SL-016"], mistakes.Select(m => $"{m.Line} {m.Code}"));
    }
}
