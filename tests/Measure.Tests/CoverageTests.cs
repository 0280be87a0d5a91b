using MathNet.Numerics.Distributions;
using ScaleLink.Measure;
using Shared;

namespace Measure.Tests;

/// <summary>Against JCGM 100:2008 (GUM), table G.2, and against a reference library.</summary>
public class CoverageTests
{
    // The file says 68.27, 95.45 and 99.73 for one, two and three sigma of the normal distribution.
    private static readonly double[] Probabilities = [0.682689492137086, .90, .95, 0.954499736103642, .99, 0.997300203936740];

    [Fact]
    public void Every_entry_of_the_table_comes_out()
    {
        var rows = File.ReadLines(RepositoryRoot.File("tests/reference/gum-table-g2-student-t.csv")).Where(l => !l.StartsWith('#')).Skip(1).Select(l => l.Split(',')).ToList();
        Assert.Equal(28, rows.Count);
        foreach (var row in rows)
            for (var i = 0; i < Probabilities.Length; i++)
            {
                var (published, computed) = (row[1 + i], row[1 + Probabilities.Length + i]);
                var factor = Coverage.Factor(row[0] == "inf" ? null : double.Parse(row[0]), Probabilities[i]);
                // The file rounds to six decimals, and names one misprint: 35 degrees, 90 %.
                Assert.Equal(double.Parse(computed), factor, 0.6e-6);
                if (row[0] != "35" || i != 1)
                    Assert.Equal(double.Parse(published), factor, 0.5001 * Math.Pow(10, -published.Split('.')[1].Length));
            }
    }

    [Fact]
    public void The_factors_are_those_of_a_reference_library()
    {
        foreach (var freedom in Enumerable.Range(1, 420).Append(1_000).Append(100_000))
            foreach (var probability in new[] { .5, .8, .95, .99, .999 })
                Assert.Equal(1, Coverage.Factor(freedom, probability) / StudentT.InvCDF(0, 1, freedom, (1 + probability) / 2), 2e-9);
        foreach (var probability in new[] { .01, .5, .95, .999, .999999 })
            Assert.Equal(Normal.InvCDF(0, 1, (1 + probability) / 2), Coverage.Factor(null, probability), 1e-9);
    }

    // GUM G.4.1: cut to the whole number below.
    [Fact]
    public void Degrees_that_are_not_whole_never_understate()
    {
        Assert.Equal(Coverage.Factor(7), Coverage.Factor(7.99));
        Assert.Equal(Coverage.Factor(1), Coverage.Factor(0.3));
        Assert.Equal(Coverage.Factor(), Coverage.Factor(double.PositiveInfinity));
        var factors = Enumerable.Range(1, 4_000).Select(tenths => Coverage.Factor(tenths / 10.0)).ToList();
        Assert.Equal(factors.OrderDescending(), factors);
        Assert.All(factors, f => Assert.True(f > Coverage.Factor()));
    }

    [Theory]
    [InlineData(0, .95)]
    [InlineData(-1, .95)]
    [InlineData(double.NaN, .95)]
    [InlineData(3, 0)]
    [InlineData(3, 1)]
    [InlineData(3, double.NaN)]
    public void What_cannot_be_covered_is_refused(double freedom, double probability) =>
        Assert.ThrowsAny<ArgumentOutOfRangeException>(() => Coverage.Factor(freedom, probability));
}
