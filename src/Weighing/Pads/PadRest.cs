namespace ScaleLink.Weighing.Pads;

/// <summary>Whether a load rests, and how far it has come.</summary>
/// <param name="Progress">0 while it moves, to 1 when it has been still for the whole window.</param>
/// <param name="Settled">Still for the whole window.</param>
/// <param name="NoiseKg">Standard deviation of the samples about their short means, kg; null with too few samples.</param>
readonly record struct RestVerdict(double Progress, bool Settled, double? NoiseKg);

/// <summary>
/// Judges rest of a load that does not swing by itself: masses on a pad, an empty pad. The window is cut into short pieces;
/// counted from the newest back, a piece is still while its mean agrees with those after it. Limits are the tolerance, or
/// what the noise allows where that is more. Common practice, no published source.
/// </summary>
static class PadRest
{
    /// <summary>Length of a reading, s.</summary>
    public const double WindowSeconds = 2;

    /// <summary>Half of the window may differ from the other half by this, kg.</summary>
    public const double ToleranceKg = 0.05;

    const int Pieces = 8;
    const int FewestPerPiece = 2;
    // Sixteen comparisons a reading should not fail on noise alone.
    const double Significant = 4;

    /// <summary>Judges the window.</summary>
    /// <param name="loadsKg">Evenly spaced samples that fill the window, oldest first. Fewer than 16 are never at rest.</param>
    public static RestVerdict Judge(ReadOnlySpan<double> loadsKg)
    {
        var length = loadsKg.Length / Pieces;
        if (length < FewestPerPiece)
            return default;
        Span<double> means = stackalloc double[Pieces];
        var noise = Describe(loadsKg, length, means);
        var still = Still(means, Math.Max(ToleranceKg, Significant * noise / Math.Sqrt(length)));
        var half = loadsKg.Length / 2;
        var drift = Math.Abs(Mean(loadsKg[..half]) - Mean(loadsKg[half..]));
        var settled = still == Pieces && drift <= Math.Max(ToleranceKg, Significant * noise * Math.Sqrt(2.0 / half));
        return new RestVerdict(settled ? 1 : Math.Min(still, Pieces - 1) / (double)Pieces, settled, noise);
    }

    // Without the widest piece: a load that jumps within one piece must not pass for noise.
    static double Describe(ReadOnlySpan<double> window, int length, Span<double> means)
    {
        Span<double> variances = stackalloc double[Pieces];
        for (var piece = 0; piece < Pieces; piece++)
        {
            // The oldest piece takes what is left over: every sample that is in a reading has to be at rest.
            var samples = window[(piece == 0 ? 0 : window.Length - (Pieces - piece) * length)..(window.Length - (Pieces - 1 - piece) * length)];
            means[piece] = Mean(samples);
            foreach (var sample in samples)
                variances[piece] += (sample - means[piece]) * (sample - means[piece]) / (samples.Length - 1);
        }
        variances.Sort();
        // What the widest of eight takes with it, more with few samples a piece (fitted to chi-squared, no published source).
        return Math.Sqrt(Mean(variances[..^1]) / (1 - 0.4 / Math.Sqrt(length - 1)));
    }

    static int Still(ReadOnlySpan<double> means, double limit)
    {
        var (sum, count) = (means[^1], 1);
        while (count < means.Length && Math.Abs(means[^(count + 1)] - sum / count) <= limit)
        {
            sum += means[^(count + 1)];
            count++;
        }
        return count;
    }

    static double Mean(ReadOnlySpan<double> values)
    {
        var sum = 0.0;
        foreach (var value in values)
            sum += value;
        return sum / values.Length;
    }
}
