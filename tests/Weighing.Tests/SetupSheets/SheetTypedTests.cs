using ScaleLink.Measure;
using ScaleLink.Weighing.SetupSheets;

namespace Weighing.Tests.SetupSheets;

/// <summary>Values of a setup sheet as people type them. Factors: NIST Special Publication 811:2008, appendix B.8; the numbers by its tables.</summary>
public class SheetTypedTests
{
    [Theory]
    [InlineData("springs.rate.LF", "70", 70)]
    [InlineData("springs.rate.LF", "400 lb/in", 70.0507)]
    [InlineData("springs.rate.LF", "400lbf/in", 70.0507)]
    [InlineData("springs.rate.LF", "70 kN/m", 70)]
    [InlineData("springs.free_length.LF", "7 in", 177.8)]
    [InlineData("springs.free_length.LF", "18.5 cm", 185)]
    [InlineData("tyres.pressure_cold.RF", "30 psi", 2.06843)]
    [InlineData("tyres.pressure_cold.RF", "150 kPa", 1.5)]
    [InlineData("tyres.temperature_hot.RF", "176 F", 80)]
    [InlineData("alignment.camber.LF", "-2.5°", -2.5)]
    [InlineData("alignment.camber.LF", "-2.5 deg", -2.5)]
    [InlineData("ballast.fitted.passenger floor", "22 lb", 9.97903)]
    [InlineData("dampers.bump_low_speed.LF", "12", 12)]
    [InlineData("dampers.bump_low_speed.LF", "12 clicks", 12)]
    public void A_number_may_have_a_unit_of_its_own(string slot, string typed, double expected) =>
        Assert.Equal(expected, SheetTyped.Read(SheetSlot.Of(slot)!.Value, typed, Units.Metric).Number!.Value, 1e-4);

    [Fact]
    public void A_number_alone_is_in_the_units_of_the_device()
    {
        Assert.Equal(70.0507, SheetTyped.Read(new("springs.rate", "LF"), "400", Units.PoundInch).Number!.Value, 1e-4);
        Assert.Equal(12, SheetTyped.Read(new("dampers.bump_low_speed", "LF"), "12", Units.PoundInch).Number);
    }

    [Theory]
    [InlineData("70,5", "70.5")]
    [InlineData("1,5 bar", "1.5 bar")]
    public void A_decimal_comma_is_told_how_to_write_it(string typed, string right)
    {
        var mistake = Mistake(() => SheetTyped.Read(new("springs.rate", "LF"), typed, Units.Metric));
        Assert.Equal("SL-613", mistake.Code.Text);
        Assert.Contains(right, mistake.Remedy.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("springs.rate.LF", "")]
    [InlineData("springs.rate.LF", "soft")]
    [InlineData("springs.rate.LF", "NaN")]
    [InlineData("springs.rate.LF", "1e3")]
    [InlineData("springs.rate.LF", "70 mm")]
    [InlineData("springs.rate.LF", "4")]
    [InlineData("springs.rate.LF", "40000")]
    [InlineData("springs.rate.LF", "400 400")]
    [InlineData("tyres.pressure_cold.LF", "22")]
    [InlineData("ballast.fitted.floor", "-1")]
    public void What_is_no_such_number_is_refused_by_place(string slot, string typed)
    {
        var mistake = Mistake(() => SheetTyped.Read(SheetSlot.Of(slot)!.Value, typed, Units.Metric));
        Assert.Equal(("SL-613", slot), (mistake.Code.Text, mistake.Where));
    }

    [Fact]
    public void A_text_of_200_signs_that_show_is_the_longest()
    {
        Assert.Equal(200, SheetTyped.Read(new("tyres.set", ""), new string('w', 200), Units.Metric).Text!.Length);
        Assert.Equal("SL-613", Mistake(() => SheetTyped.Read(new("tyres.set", ""), new string('w', 201), Units.Metric)).Code.Text);
        Assert.Equal("SL-613", Mistake(() => SheetTyped.Read(new("tyres.set", ""), "B\u001b[2J", Units.Metric)).Code.Text);
    }

    [Theory]
    [InlineData("springs.rate.front", new[] { "springs.rate.LF", "springs.rate.RF" })]
    [InlineData("springs.rate.left", new[] { "springs.rate.LF", "springs.rate.LR" })]
    [InlineData("Springs.Rate.lr", new[] { "springs.rate.LR" })]
    [InlineData("springs.rate.all", new[] { "springs.rate.LF", "springs.rate.RF", "springs.rate.LR", "springs.rate.RR" })]
    [InlineData("bars.step.all", new[] { "bars.step.front", "bars.step.rear" })]
    [InlineData("fuel.fill", new[] { "fuel.fill" })]
    [InlineData("ballast.fitted.box no. 2", new[] { "ballast.fitted.box no. 2" })]
    public void A_name_stands_for_one_place_or_several(string name, string[] slots) => Assert.Equal(slots, SheetNaming.Slots(name).Select(s => s.ToString()));

    [Theory]
    [InlineData("springs")]
    [InlineData("springs.rate")]
    [InlineData("springs.rate.middle")]
    [InlineData("springs.rat.LF")]
    [InlineData("fuel.fill.LF")]
    [InlineData("bars.step.LF")]
    [InlineData("ballast.fitted")]
    [InlineData("..")]
    [InlineData("")]
    public void A_name_that_there_is_not_is_refused_with_those_there_are(string name)
    {
        var mistake = Mistake(() => SheetNaming.Slots(name));
        Assert.Equal("SL-612", mistake.Code.Text);
        Assert.False(mistake.Remedy.IsEmpty);
    }

    internal static Diagnostic Mistake(Action act) => Assert.Throws<DiagnosticException>(act).Diagnostics[0];
}
