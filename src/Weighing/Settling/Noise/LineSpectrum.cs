using System.Numerics;
using MathNet.Numerics.IntegralTransforms;

namespace ScaleLink.Weighing.Settling.Noise;

/// <summary>Finds steady lines in a block of raw samples of one pad at rest.</summary>
static class LineSpectrum
{
    const int LeastSamples = 32;
    const double Threshold = 6;

    /// <summary>Lines that stand well above the noise, the largest first.</summary>
    /// <param name="samples">Evenly spaced samples, kg, 32 or more; a slow trend is taken out.</param>
    /// <param name="sampleRateHz">Samples a second.</param>
    /// <exception cref="ArgumentOutOfRangeException">Too few samples, or a rate that is not positive.</exception>
    public static IReadOnlyList<SpectralLine> Lines(ReadOnlySpan<double> samples, double sampleRateHz)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(samples.Length, LeastSamples);
        if (!(sampleRateHz > 0))
            throw new ArgumentOutOfRangeException(nameof(sampleRateHz), sampleRateHz, "The sample rate must be positive.");
        var amplitudes = Amplitudes(samples);
        var floor = amplitudes[2..].Order().ElementAt((amplitudes.Length - 2) / 2);
        var lines = new List<SpectralLine>();
        for (var i = 2; i < amplitudes.Length - 1; i++)
        {
            if (amplitudes[i] < amplitudes[i - 1] || amplitudes[i] <= amplitudes[i + 1] || amplitudes[i] < Threshold * floor) continue;
            var (offset, peak) = Peak(amplitudes[i - 1], amplitudes[i], amplitudes[i + 1]);
            lines.Add(new((i + offset) * sampleRateHz / samples.Length, peak, floor > 0 ? peak / floor : double.PositiveInfinity));
        }
        return [.. lines.OrderByDescending(line => line.AmplitudeKg)];
    }

    /// <summary>Where a frequency appears when sampled: folded into 0 to half the sample rate.</summary>
    public static double Folded(double hz, double sampleRateHz) => Math.Abs(hz - sampleRateHz * Math.Round(hz / sampleRateHz));

    /// <summary>Amplitude spectrum under a Hann window, from the detrended samples.</summary>
    static double[] Amplitudes(ReadOnlySpan<double> samples)
    {
        var n = samples.Length;
        double mean = 0, slope = 0, spread = 0;
        foreach (var sample in samples) mean += sample / n;
        for (var i = 0; i < n; i++)
        {
            var x = i - (n - 1) / 2.0;
            slope += x * (samples[i] - mean);
            spread += x * x;
        }
        slope /= spread;
        var bins = new Complex[n];
        for (var i = 0; i < n; i++)
        {
            var window = 0.5 - 0.5 * Math.Cos(2 * Math.PI * i / n);
            bins[i] = window * (samples[i] - mean - slope * (i - (n - 1) / 2.0));
        }
        Fourier.Forward(bins, FourierOptions.NoScaling);
        // The Hann window halves an amplitude and half of it lies at the negative frequency.
        return [.. bins[..(n / 2 + 1)].Select(bin => 4 * bin.Magnitude / n)];
    }

    /// <summary>
    /// Frequency offset in bins and amplitude of a line between bins. Under a Hann window the two neighbours' ratio r gives the
    /// offset (2r - 1)/(r + 1) exactly for a lone line.
    /// </summary>
    static (double Offset, double Amplitude) Peak(double left, double centre, double right)
    {
        var side = right >= left ? 1 : -1;
        var ratio = Math.Max(left, right) / centre;
        var offset = (2 * ratio - 1) / (ratio + 1);
        var x = Math.PI * offset;
        var loss = Math.Abs(x) < 1e-9 ? 1 : Math.Sin(x) / x / (1 - offset * offset);
        return (side * offset, centre / loss);
    }
}
