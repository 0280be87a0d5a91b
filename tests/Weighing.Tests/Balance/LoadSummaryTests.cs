using ScaleLink.Measure;
using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Statics;
using Weighing.Tests.Cars;

namespace Weighing.Tests.Balance;

public class LoadSummaryTests
{
    [Fact]
    public void Shares_and_differences_follow_their_formulas()
    {
        var summary = new LoadSummary(new(268, 288, 257, 235), default);

        Assert.Equal(1048, summary.TotalKg.Estimate, 12);
        Assert.Equal(100 * 545.0 / 1048, summary.CrossWeightPercent.Estimate, 12);
        Assert.Equal(100 * 556.0 / 1048, summary.FrontWeightPercent.Estimate, 12);
        Assert.Equal(100 * 525.0 / 1048, summary.LeftSideWeightPercent.Estimate, 12);
        Assert.Equal(-20, summary.FrontLeftRightDifferenceKg.Estimate, 12);
        Assert.Equal(22, summary.RearLeftRightDifferenceKg.Estimate, 12);
    }

    [Fact]
    public void Equal_independent_uncertainties_give_the_closed_form()
    {
        // Derived: for shares near one half, u(share) = 100 u / total for four independent loads of uncertainty u.
        var summary = new LoadSummary(Corners.Same(250), CornerMatrix.Diagonal(Corners.Same(0.09)));

        Assert.Equal(100 * 0.3 / 1000, summary.CrossWeightPercent.Uncertainty, 12);
        Assert.Equal(0.6, summary.TotalKg.Uncertainty, 12);
        Assert.Equal(0.3 * Math.Sqrt(2), summary.FrontLeftRightDifferenceKg.Uncertainty, 12);
    }

    [Fact]
    public void A_uncertainty_that_all_pads_share_in_proportion_leaves_shares_alone()
    {
        var summary = new LoadSummary(Heron.Loads, 1e-6 * CornerMatrix.Outer(Heron.Loads, Heron.Loads));

        Assert.Equal(0, summary.CrossWeightPercent.Uncertainty, 9);
        Assert.Equal(0.001 * 1048, summary.TotalKg.Uncertainty, 9);
    }

    [Fact]
    public void Uncertainties_agree_with_the_spread_of_drawn_loads()
    {
        var random = new Random(7201);
        var mix = CornerMatrix.FromRows(_ => Corners.From(_ => random.NextDouble() - 0.3));
        var summary = new LoadSummary(Heron.Loads, mix * mix.Transposed);
        List<double> cross = [], front = [];
        for (var i = 0; i < 4000; i++)
        {
            var drawn = new LoadSummary(Heron.Loads + mix * Corners.From(_ => MathNet.Numerics.Distributions.Normal.Sample(random, 0, 1)), default);
            cross.Add(drawn.CrossWeightPercent.Estimate);
            front.Add(drawn.FrontWeightPercent.Estimate);
        }
        Assert.Equal(1, MathNet.Numerics.Statistics.Statistics.StandardDeviation(cross) / summary.CrossWeightPercent.Uncertainty, 0.05);
        Assert.Equal(1, MathNet.Numerics.Statistics.Statistics.StandardDeviation(front) / summary.FrontWeightPercent.Uncertainty, 0.05);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-2)]
    [InlineData(double.NaN)]
    public void A_wheel_without_load_leaves_nothing_to_share(double load) =>
        Assert.Equal(CarCodes.Loads, Assert.Throws<DiagnosticException>(() => new LoadSummary(new(200, load, 200, 200), default)).Diagnostics[0].Code);

    [Fact]
    public void Few_readings_widen_the_interval_by_students_t()
    {
        // GUM table G.2 (tests/reference/gum-table-g2-student-t.csv): 95 %, 4 degrees of freedom, 2.78.
        Assert.Equal(2.78, new Value(0, 1, 4).HalfWidth(), 0.005);
        Assert.Equal(1.96, new Value(0, 1).HalfWidth(), 0.001);
    }
}
