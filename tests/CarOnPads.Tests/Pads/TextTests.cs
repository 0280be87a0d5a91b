using System.Text;
using CarOnPads.Bench;
using CarOnPads.Pads;
using CarOnPads.Physics;
using CarOnPads.Runtime;
using ScaleLink.Protocol.Readings;
using ScaleLink.Protocol.TextLines;

namespace CarOnPads.Tests.Pads;

public class TextTests
{
    const string Pattern = @"load (?<load>-?\d+\.\d+) kg( pitch (?<pitch>-?\d+\.\d+) roll (?<roll>-?\d+\.\d+))? temp (?<temperature>-?\d+\.\d+)\*(?<check>[0-9A-F]{2})";

    [Fact]
    public void A_pad_prints_a_line_for_each_sample_that_proves_itself()
    {
        var tap = new Tap();
        using var bay = new Bay(new BayOptions { Hertz = 50, Raised = true, Speaking = Speaking.Parse("text") }, _ => tap);
        bay.PutMass(Wheel.RR, 25, 0, 0);
        bay.Pad(Wheel.RR).PitchDegrees = 1.5;
        bay.AdvanceTo(2);
        tap.Clear();
        bay.AdvanceTo(3);
        Assert.True(LinePattern.TryCreate(Pattern, FieldUnit.Kilogram, 1, LineChecksum.Xor, out var pattern, out _));
        var lines = Encoding.ASCII.GetString(tap.Bytes).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(4 * 50, lines.Length, 4.0);
        var readings = lines.Select(line => (Fits: pattern.TryRead(line, out var reading), Reading: reading)).ToList();
        Assert.All(readings, r => Assert.True(r.Fits));
        var loaded = readings.Where(r => r.Reading.Sum > 100_000).Select(r => r.Reading).ToList();
        Assert.Equal(50, loaded.Count, 1.0);
        Assert.All(loaded, r => Assert.Equal(25 * Math.Cos(1.5 * Math.PI / 180), r.Sum * FieldUnits.MassStepKg, 0.01));
        Assert.All(loaded, r => Assert.Equal(1.5, r.PitchDegrees));
    }

    [Theory]
    [InlineData("several", "ST 04 G   25.000 kg T    1.500 kg\r\n")]
    [InlineData("several+return", "ST 04 G   25.000 kg T    1.500 kg\r")]
    [InlineData("several+stx-etx", "\u0002ST 04 G   25.000 kg T    1.500 kg\u0003")]
    public void A_line_has_several_numbers_and_ends_as_it_is_told(string style, string line)
    {
        var tap = new Tap();
        using var bay = new Bay(new BayOptions { Hertz = 50, Raised = true, Speaking = Speaking.Parse("RR=text"), TextStyles = TextStyles.Parse($"RR={style}") }, w => w == Wheel.RR ? tap : new Tap());
        bay.PutMass(Wheel.RR, 25, 0, 0);
        bay.AdvanceTo(3);
        Assert.EndsWith(line + line, Encoding.ASCII.GetString(tap.Bytes), StringComparison.Ordinal);
        bay.PutMass(Wheel.RR, 400, 0, 0, atOnce: true);
        tap.Clear();
        bay.AdvanceTo(3.05);
        Assert.Contains("US 04 G  399.99", Encoding.ASCII.GetString(tap.Bytes), StringComparison.Ordinal);
        bay.PutMass(Wheel.RR, 5000, 0, 0, atOnce: true);
        tap.Clear();
        bay.AdvanceTo(3.1);
        Assert.Contains("OL 04 G", Encoding.ASCII.GetString(tap.Bytes), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("RR=loud")]
    [InlineData("FL=several")]
    [InlineData("several")]
    [InlineData("RR=stx-etx+return")]
    public void Nobody_prints_in_another_way(string text) => Assert.Equal("CP-107", Assert.Throws<SimulatorException>(() => TextStyles.Parse(text)).Code);

    [Theory]
    [InlineData("morse")]
    [InlineData("FL=text")]
    [InlineData("LF=morse")]
    public void Nobody_speaks_anything_else(string text) => Assert.Equal("CP-107", Assert.Throws<SimulatorException>(() => Speaking.Parse(text)).Code);
}
