using CsCheck;
using ScaleLink.Weighing.Statistics;
using MathNetF = MathNet.Numerics.Distributions.FisherSnedecor;
using MathNetT = MathNet.Numerics.Distributions.StudentT;

namespace Weighing.Tests.Statistics;

public class ProbabilityTests
{
    [Fact]
    public void Tails_agree_with_an_independent_library() =>
        Gen.Select(Gen.Double[0.01, 8], Gen.Double[1, 60], Gen.Double[1, 60]).Sample((value, a, b) =>
        {
            Assert.Equal(2 * MathNetT.CDF(0, 1, a, -value), Probability.OutsideT(value, a), 1e-9);
            Assert.Equal(1 - MathNetF.CDF(a, b, value), Probability.AboveF(value, a, b), 1e-9);
        });
}
