using System.Globalization;
using ScaleLink.Client.Readings;
using Shared;

namespace Client.Tests.Readings;

/// <summary>Source: JCGM 100:2008 (GUM), Table G.2, column 95 %, from tests/reference; the last row is the normal distribution.</summary>
public class CoverageTests
{
    public static TheoryData<double, double> Table()
    {
        var rows = new TheoryData<double, double>();
        foreach (var cells in File.ReadLines(RepositoryRoot.File("tests", "reference", "gum-table-g2-student-t.csv")).Where(l => !l.StartsWith('#')).Skip(1).Select(l => l.Split(',')))
            rows.Add(double.TryParse(cells[0], CultureInfo.InvariantCulture, out var nu) ? nu : double.PositiveInfinity, double.Parse(cells[9], CultureInfo.InvariantCulture));
        return rows;
    }

    [Theory]
    [MemberData(nameof(Table))]
    public void Factors_are_those_of_the_table(double degreesOfFreedom, double factor) =>
        Assert.Equal(factor, Coverage.Factor(degreesOfFreedom), 1e-5);

    [Fact]
    public void Without_a_standard_uncertainty_nothing_is_claimed() => Assert.Null(Coverage.Expanded(Readouts.Quantity(50, null)));

    [Fact]
    public void Few_degrees_of_freedom_widen_the_interval()
    {
        var quantity = Readouts.Quantity(50, null);
        quantity.StandardUncertainty = 0.1;
        quantity.DegreesOfFreedom = 4;
        Assert.Equal(0.278, Coverage.Expanded(quantity)!.Value, 3);
    }
}
