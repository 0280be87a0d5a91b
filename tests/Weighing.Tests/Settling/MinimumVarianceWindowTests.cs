using ScaleLink.Measure;
using ScaleLink.Weighing.Settling;

namespace Weighing.Tests.Settling;

/// <summary>
/// The printed digits come from an independent implementation (NumPy, general solver) of the same equations; no published
/// source exists.
/// </summary>
public class MinimumVarianceWindowTests
{
    static readonly Corners Noise = new(.05, .05, .06, .06);

    [Fact]
    public void The_made_up_blocks_are_the_agreed_ones()
    {
        var first = DecayingModes.Blocks(1)[0];
        Assert.Equal(312.602051, first.LF, 6);
        Assert.Equal(303.062369, first.RF, 6);
        Assert.Equal(263.810239, first.LR, 6);
        Assert.Equal(256.900159, first.RR, 6);
    }

    public static TheoryData<int, int, double[], double, double[]> Printed => new()
    {
        { 20, 10, [300.94956, 299.02753, 250.96204, 249.00000], .348761, [.414306, .199905, .226220, .354920] },
        { 28, 14, [300.99696, 298.99423, 250.99982, 248.99002], .214337, [.020607, .023005, .017897, .029756] },
        { 40, 20, [300.99588, 298.99886, 251.00316, 248.98596], .188853, [.002053, .005559, .005991, .010297] },
    };

    [Theory]
    [MemberData(nameof(Printed))]
    public void Agrees_with_an_independent_implementation(int length, int taps, double[] loads, double gain, double[] repeatability)
    {
        var history = new BlockHistory();
        foreach (var block in DecayingModes.Blocks(length)) history.Add(block);
        var window = new MinimumVarianceWindow(length, taps);

        window.Fit(history, Noise);

        var residual = window.Residual.Diagonal;
        foreach (var corner in Corners.All)
        {
            Assert.Equal(loads[(int)corner], window.Loads[corner], 5);
            Assert.Equal(repeatability[(int)corner], Math.Sqrt(residual[corner]), 6);
        }
        Assert.Equal(gain, window.NoiseGain, 6);
    }

    [Fact]
    public void Weights_sum_to_one_and_become_a_plain_mean_without_rocking()
    {
        var history = new BlockHistory();
        for (var i = 0; i < 20; i++) history.Add(new(300, 299, 251, 249));
        var window = new MinimumVarianceWindow(20, 10);

        window.Fit(history, Noise);

        foreach (var weight in window.Weights) Assert.Equal(0.1, weight, 12);
        Assert.Equal(new Corners(300, 299, 251, 249), window.Loads);
    }
}
