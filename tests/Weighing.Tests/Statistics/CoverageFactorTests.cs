using CsCheck;
using ScaleLink.Weighing.Statistics;
using MathNetF = MathNet.Numerics.Distributions.FisherSnedecor;
using MathNetT = MathNet.Numerics.Distributions.StudentT;

namespace Weighing.Tests.Statistics;

public class CoverageFactorTests
{
    static readonly (string Published, string Exact, double Coverage)[] Columns =
    [
        // The GUM's 68.27, 95.45 and 99.73 per cent are the one, two and three sigma shares of the normal distribution.
        ("t68_27", "x68_27", 0.682689492137086), ("t90", "x90", 0.90), ("t95", "x95", 0.95),
        ("t95_45", "x95_45", 0.954499736103642), ("t99", "x99", 0.99), ("t99_73", "x99_73", 0.997300203936740),
    ];

    [Fact]
    public void Every_entry_of_GUM_Table_G2_comes_out()
    {
        // GUM Table G.2 = NIST TN 1297 Table B.1; the reference file names one misprint (35 degrees, 90 %).
        var rows = ReferenceData.Rows("gum-table-g2-student-t.csv");
        Assert.Equal(28, rows.Count);
        foreach (var row in rows)
            foreach (var (published, exact, coverage) in Columns)
            {
                var dof = row["nu"] == "inf" ? double.PositiveInfinity : ReferenceData.Number(row["nu"]);
                var factor = Probability.CoverageFactor(coverage, dof);
                // The file rounds to six decimals.
                Assert.Equal(ReferenceData.Number(row[exact]), factor, 0.6e-6);
                if (row["nu"] == "35" && published == "t90")
                    continue;
                var decimals = row[published].Split('.')[1].Length;
                Assert.Equal(ReferenceData.Number(row[published]), factor, 0.5001 * Math.Pow(10, -decimals));
            }
    }

    [Fact]
    public void Tails_agree_with_an_independent_library() =>
        Gen.Select(Gen.Double[0.01, 8], Gen.Double[1, 60], Gen.Double[1, 60]).Sample((value, a, b) =>
        {
            Assert.Equal(2 * MathNetT.CDF(0, 1, a, -value), Probability.OutsideT(value, a), 1e-9);
            Assert.Equal(1 - MathNetF.CDF(a, b, value), Probability.AboveF(value, a, b), 1e-9);
        });

    [Theory]
    [InlineData(0, 5)]
    [InlineData(1, 5)]
    [InlineData(0.95, 0)]
    [InlineData(0.95, double.NaN)]
    public void Nonsense_is_refused(double coverage, double dof) =>
        Assert.ThrowsAny<ArgumentOutOfRangeException>(() => Probability.CoverageFactor(coverage, dof));
}
