using ScaleLink.Weighing.Settling.Noise;
using Weighing.Tests.Settling.Scenarios;

namespace Weighing.Tests.Settling.Noise;

public class AutocorrelationTests
{
    /// <summary>A first-order series has the variance of its mean inflated by (1 + a)/(1 - a): C. Geyer, University of Minnesota, notes for
    /// Stat 8054, "AR(1)", as the variance of the central limit theorem.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(.5)]
    [InlineData(.8)]
    public void Standard_error_counts_the_memory_of_the_series(double memory)
    {
        var draw = new Draw(17);
        const int series = 300, length = 400;
        double told = 0, seen = 0;
        for (var s = 0; s < series; s++)
        {
            var values = new double[length];
            var now = draw.Normal() / Math.Sqrt(1 - memory * memory);
            foreach (ref var value in values.AsSpan()) value = now = memory * now + draw.Normal();
            told += Math.Pow(Autocorrelation.StandardErrorOfMean(values), 2) / series;
            seen += Math.Pow(values.Average(), 2) / series;
        }
        var expected = (1 + memory) / (1 - memory) / (1 - memory * memory) / length;
        Assert.Equal(expected, seen, expected * .25);
        Assert.Equal(expected, told, expected * .25);
    }

    [Fact]
    public void Constant_readings_have_no_error_and_one_reading_has_no_repeatability()
    {
        Assert.Equal(0, Autocorrelation.StandardErrorOfMean([3, 3, 3]));
        Assert.Throws<ArgumentException>(() => Autocorrelation.StandardErrorOfMean([3]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Autocorrelation.At([3, 4], 2));
    }
}
