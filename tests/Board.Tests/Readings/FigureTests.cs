using ScaleLink.Api.V1;
using ScaleLink.Board.Readings;

namespace Board.Tests.Readings;

/// <summary>Numbers are shown no finer than their uncertainty supports.</summary>
public class FigureTests
{
    // JCGM 100:2008, table G.2, t for 95 %, and G.4.1: between two rows the smaller number of degrees of freedom.
    [Theory]
    [InlineData(1.0, 12.71)]
    [InlineData(2.0, 4.30)]
    [InlineData(4.0, 2.78)]
    [InlineData(4.9, 2.78)]
    [InlineData(16.0, 2.12)]
    [InlineData(50.0, 2.01)]
    [InlineData(null, 1.960)]
    public void Coverage_is_students_t(double? degreesOfFreedom, double factor) => Assert.Equal(factor, Coverage.Factor(degreesOfFreedom));

    [Fact]
    public void Coverage_never_widens_with_more_degrees_of_freedom()
    {
        var factors = Enumerable.Range(1, 300).Select(v => Coverage.Factor(v)).ToList();
        Assert.Equal(factors.OrderDescending(), factors);
    }

    // Rounding by hand after JCGM 100:2008, 7.2.6: one digit of U, rounded up. U = 1.96 u.
    [Theory]
    [InlineData(273.5478, 0.1, "273.5", "0.2")]
    [InlineData(273.5478, 0.04, "273.5", "0.1")]
    [InlineData(273.5478, 0.5, "274", "1")]
    [InlineData(273.5478, 4.9, "270", "10")]
    [InlineData(-0.04, 0.1, "0.0", "0.2")]
    [InlineData(-5.94, 0.1, "\u22125.9", "0.2")]
    public void Loads_keep_one_digit_of_uncertainty(double value, double u, string shown, string interval)
    {
        var figure = Figure.Load(new MeasuredValue { Estimate = value, StandardUncertainty = u }, Unit.Kilogram);
        Assert.Equal((shown, interval), (figure.Value, figure.Uncertainty));
    }

    [Fact]
    public void Without_a_claim_a_number_is_marked_as_rough()
    {
        Assert.Equal("~274", Figure.Load(new MeasuredValue { Estimate = 273.5478 }, Unit.Kilogram).Text);
        Assert.Equal("~50.4", Figure.Percent(new MeasuredValue { Estimate = 50.42 }).Text);
    }

    // 1 lb = 0.45359237 kg exactly (NIST Special Publication 811:2008, appendix B.8).
    [Fact]
    public void Pounds_carry_their_uncertainty_with_them()
    {
        var figure = Figure.Load(new MeasuredValue { Estimate = 45.359237, StandardUncertainty = 0.045359237 }, Unit.Pound);
        Assert.Equal(("100.0", "0.2"), (figure.Value, figure.Uncertainty));
    }
}
