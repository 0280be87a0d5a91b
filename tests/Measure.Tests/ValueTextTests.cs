using System.Globalization;
using ScaleLink.Measure;

namespace Measure.Tests;

/// <summary>Rounding by hand after JCGM 100:2008, 7.2.6; keeping the second digit of a 1 or 2 is common practice, no published source.</summary>
public class ValueTextTests
{
    private static Value WithU(double estimate, double expanded) => new(estimate, expanded / Coverage.Factor());

    [Theory]
    [InlineData(50.1234, 0.12, "50.12 % ± 0.12 %")]
    [InlineData(50.1234, 0.2, "50.12 % ± 0.20 %")]
    [InlineData(50.1234, 0.3, "50.1 % ± 0.3 %")]
    [InlineData(50.1234, 0.2805, "50.12 % ± 0.28 %")]
    [InlineData(50.1234, 0.31, "50.1 % ± 0.4 %")]
    [InlineData(50.1234, 0.33, "50.1 % ± 0.4 %")]
    [InlineData(50.1234, 0.0301, "50.12 % ± 0.03 %")]
    [InlineData(50.1234, 0.0005, "50.12 % ± 0.01 %")]
    [InlineData(50.1234, 0.98, "50.1 % ± 1.0 %")]
    [InlineData(50.1234, 1.3, "50.1 % ± 1.3 %")]
    [InlineData(50.1234, 3.04, "50 % ± 3 %")]
    [InlineData(50.1234, 12.04, "50 % ± 12 %")]
    [InlineData(50.1234, 38, "50 % ± 40 %")]
    [InlineData(-0.04, 0.5, "0.0 % ± 0.5 %")]
    [InlineData(-2.26, 0.5, "−2.3 % ± 0.5 %")]
    public void A_value_is_no_finer_than_its_uncertainty_supports(double estimate, double expanded, string text) =>
        Assert.Equal(text, ValueText.Of(WithU(estimate, expanded), Unit.Percent).Full);

    [Fact]
    public void Where_nothing_is_claimed_nothing_is_said_of_it()
    {
        Assert.Equal("~50.1 %", ValueText.Of(new(50.1234, null), Unit.Percent).Full);
        Assert.Equal("~262", ValueText.Of(new(262.44, null), Unit.Kilogram).Bare);
        Assert.Equal("\u2013", ValueText.Of(new(double.NaN, null), Unit.Kilogram).Estimate);
        // An uncertainty of zero is a claim; it is shown as such.
        Assert.Equal("50.00 ± 0.00", ValueText.Of(new(50, 0), Unit.Percent).Bare);
    }

    // 1 lb = 0.453 592 37 kg exactly (NIST SP 811:2008, B.8): 100 kg are 220.462 lb, U = 0.5 kg is 1.1023 lb, rounded up with a twentieth of grace.
    [Fact]
    public void A_value_in_another_unit_is_rounded_there()
    {
        Assert.Equal("220.5 lb ± 1.1 lb", ValueText.Of(WithU(100, 0.5), Unit.Pound).Full);
        Assert.Equal("100.0 kg ± 0.5 kg", ValueText.Of(WithU(100, 0.5), Unit.Kilogram).Full);
        Assert.Equal("+1.969 in ± 0.004 in", ValueText.Of(WithU(50, 0.1), Unit.Inch, isSigned: true).Full);
    }

    // Facts of the units from NIST SP 811:2008, B.8: 1 lbf/in = 175.126 8 N/m, 1 psi = 6 894.757 Pa.
    [Fact]
    public void The_factors_of_the_units_are_those_of_the_handbook()
    {
        Assert.Equal(0.1751268, Unit.PoundPerInch.Factor, 7);
        Assert.Equal(0.06894757, Unit.Psi.Factor, 8);
    }

    [Fact]
    public void U_is_never_understated_by_more_than_a_twentieth_of_its_last_digit_and_never_overstated_by_more_than_a_third()
    {
        for (var expanded = 0.003; expanded < 3; expanded *= 1.013)
        {
            var text = ValueText.Of(WithU(50.1234, expanded), Unit.Kilogram);
            var shown = double.Parse(text.Expanded!, CultureInfo.InvariantCulture);
            Assert.InRange(shown, 0.983 * expanded, 1.34 * expanded);
            Assert.Equal(text.Expanded!.Split('.').Skip(1).Sum(d => d.Length), text.Estimate.Split('.').Skip(1).Sum(d => d.Length));
            Assert.InRange(Math.Abs(double.Parse(text.Estimate, CultureInfo.InvariantCulture) - 50.1234), 0, 0.5 * shown + 1e-9);
        }
    }
}
