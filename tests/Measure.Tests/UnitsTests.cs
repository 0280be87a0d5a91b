using ScaleLink.Measure;

namespace Measure.Tests;

/// <summary>
/// Factors against NIST Special Publication 811 (2008), appendix B.8: pound avoirdupois 4.535 923 7 E-01 kg and inch 2.54 E-02 m, both exact;
/// pound-force per inch 1.751 268 E+02 N/m; psi 6.894 757 E+03 Pa. The figures are written here from memory of that table.
/// </summary>
public class UnitsTests
{
    [Fact]
    public void The_pound_and_the_inch_are_exact()
    {
        Assert.Equal(0.45359237, Units.PoundInch.Mass.Factor);
        Assert.Equal(25.4, Units.PoundInch.Length.Factor);
    }

    [Fact]
    public void Rates_and_pressures_follow_from_them()
    {
        Assert.Equal(175.1268 / 1000, Units.PoundInch.Rate.Factor, 5e-8);
        Assert.Equal(6894.757 / 1e5, Units.PoundInch.Pressure.Factor, 5e-9);
        Assert.Equal((1, 1), (Units.Metric.Rate.Factor, Units.Metric.Pressure.Factor));
    }

    [Theory]
    [InlineData("lb-in", "lb", "in", "lb/in", "psi")]
    [InlineData("kg-mm", "kg", "mm", "N/mm", "bar")]
    [InlineData("stone-cubit", "kg", "mm", "N/mm", "bar")]
    [InlineData(null, "kg", "mm", "N/mm", "bar")]
    public void One_word_names_all_of_them(string? name, params string[] signs)
    {
        var units = Units.Named(name);
        Assert.Equal(string.Join(" ", signs), $"{units.Mass.Sign} {units.Length.Sign} {units.Rate.Sign} {units.Pressure.Sign}");
        Assert.Equal(units, Units.Named(units.Name));
    }
}
