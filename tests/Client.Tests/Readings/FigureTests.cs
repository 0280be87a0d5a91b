using CsCheck;
using ScaleLink.Client.Readings;

namespace Client.Tests.Readings;

/// <summary>JCGM 100:2008, 7.2.6 asks for at most two digits and allows rounding up; the second only after a 1 is common practice, no published source.</summary>
public class FigureTests
{
    [Theory]
    [InlineData(51.3724, 0.031, "51.37 ±0.03")]
    [InlineData(51.3724, 0.012, "51.372 ±0.012")]
    [InlineData(51.3724, 0.123, "51.37 ±0.12")]
    [InlineData(51.3724, 0.096, "51.37 ±0.10")]
    [InlineData(51.3724, 0.3, "51.4 ±0.3")]
    [InlineData(51.3724, 2.4, "51 ±3")]
    [InlineData(1047.6, 14, "1048 ±14")]
    [InlineData(51.3724, 0.00002, "51.372 ±0.001")]
    [InlineData(-0.004, 0.1, "0.00 ±0.10")]
    public void Value_and_uncertainty_end_at_the_same_place(double value, double expanded, string text) =>
        Assert.Equal(text, Figure.Percent(Readouts.Quantity(value, expanded)).Full(Glyphs.Rich));

    [Theory]
    [InlineData(51.3724, "~51.4")]
    [InlineData(-0.02, "~0.0")]
    public void Without_a_claim_a_share_is_rough_and_says_so(double value, string text) =>
        Assert.Equal(text, Figure.Percent(Readouts.Quantity(value, null)).Full(Glyphs.Rich));

    [Theory]
    [InlineData(37.14, "+37.1 ±0.4")]
    [InlineData(-37.14, "-37.1 ±0.4")]
    [InlineData(0.04, "0.0 ±0.4")]
    public void A_difference_carries_its_sign(double value, string text) =>
        Assert.Equal(text, Figure.Kilograms(Readouts.Quantity(value, 0.4), signed: true).Full(Glyphs.Rich));

    [Fact]
    public void No_digit_is_finer_than_the_uncertainty_and_the_uncertainty_is_never_understated_by_more_than_a_twentieth() =>
        Gen.Select(Gen.Double[-2000, 2000], Gen.Double[-2.9, 1.9]).Sample((value, exponent) =>
        {
            var expanded = Math.Pow(10, exponent);
            var figure = Figure.Kilograms(Readouts.Quantity(value, expanded));
            var decimals = figure.Value.Contains('.') ? figure.Value.Length - figure.Value.IndexOf('.') - 1 : 0;
            var shown = double.Parse(figure.Uncertainty!);
            return Math.Pow(10, -decimals) <= Math.Max(1, expanded * 1.06) && shown >= expanded * 0.95 && shown <= expanded * 2.01
                && Math.Abs(double.Parse(figure.Value) - value) <= shown / 2 + 1e-9;
        });
}
