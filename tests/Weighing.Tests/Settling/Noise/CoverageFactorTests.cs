using ScaleLink.Weighing.Settling.Noise;

namespace Weighing.Tests.Settling.Noise;

/// <summary>Against Student's t in GUM Table G.2 (JCGM 100:2008), the same as NIST TN 1297 Table B.1.</summary>
public class CoverageFactorTests
{
    static readonly double[] Coverages = [.6827, .90, .95, .9545, .99, .9973];

    [Fact]
    public void Agrees_with_every_entry_of_the_table()
    {
        foreach (var row in ReferenceData.Rows("gum-table-g2-student-t.csv"))
            for (var i = 0; i < Coverages.Length; i++)
            {
                var known = row[1 + i];
                // The table prints 1.70 for 35 degrees of freedom and 90 %; the exact value is 1.6896.
                if (row[0] == 35 && Coverages[i] == .90) known = 1.69;
                Assert.Equal(known, CoverageFactor.For(row[0], Coverages[i]), known > 100 ? .35 : .0052);
            }
    }

    [Fact]
    public void Becomes_the_normal_distribution_without_end()
    {
        Assert.Equal(1.960, CoverageFactor.For(double.PositiveInfinity), 3);
        Assert.Equal(2.000, CoverageFactor.For(60), 3);
    }

    [Theory]
    [InlineData(.5, .95)]
    [InlineData(double.NaN, .95)]
    [InlineData(5, 1)]
    public void Refuses_what_has_no_answer(double degrees, double coverage) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => CoverageFactor.For(degrees, coverage));
}
