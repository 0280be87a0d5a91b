using ScaleLink.Weighing.Settling.Noise;
using Weighing.Tests.Settling.Scenarios;

namespace Weighing.Tests.Settling.Noise;

public class LineSpectrumTests
{
    [Theory]
    [InlineData(50, .10, 320)]
    [InlineData(12.34, .05, 80)]
    [InlineData(50, .08, 80)]
    public void Finds_a_line_between_bins_with_its_amplitude(double hz, double amplitude, double rate)
    {
        var draw = new Draw(3);
        var samples = new double[1000];
        for (var i = 0; i < samples.Length; i++)
            samples[i] = 250 + .0005 * i + amplitude * Math.Cos(2 * Math.PI * hz * i / rate + .4) + .05 * draw.Normal();

        var line = LineSpectrum.Lines(samples, rate)[0];

        Assert.Equal(LineSpectrum.Folded(hz, rate), line.Hz, rate / samples.Length * .2);
        // Three standard deviations of an amplitude under a Hann window: noise times the root of 2 * 1.5 / n.
        Assert.Equal(amplitude, line.AmplitudeKg, 3 * .05 * Math.Sqrt(3.0 / samples.Length));
    }

    [Fact]
    public void Finds_nothing_in_noise()
    {
        var draw = new Draw(4);
        for (var trial = 0; trial < 50; trial++)
            Assert.Empty(LineSpectrum.Lines([.. Enumerable.Range(0, 1000).Select(_ => 250 + .1 * draw.Normal())], 80));
    }

    /// <summary>Sampling at the mains' own multiple hides the hum as a steady offset.</summary>
    [Theory]
    [InlineData(50, 80, 30)]
    [InlineData(60, 80, 20)]
    [InlineData(80, 80, 0)]
    [InlineData(100, 320, 100)]
    public void Folds_as_sampling_does(double hz, double rate, double seen) => Assert.Equal(seen, LineSpectrum.Folded(hz, rate), 9);

    [Fact]
    public void Refuses_too_little_or_a_rate_of_nothing()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => LineSpectrum.Lines(new double[10], 80));
        Assert.Throws<ArgumentOutOfRangeException>(() => LineSpectrum.Lines(new double[100], 0));
    }
}
