namespace ScaleLink.Weighing.Settling.Noise;

/// <summary>How much neighbouring readings repeat each other, and what that does to the standard error of their mean.</summary>
/// <remarks>
/// The correction n_eff = n / (1 + 2 Σ (1 - k/n) r_k) is the usual one for a stationary series (Bayley and Hammersley 1946, from
/// memory); the sum ends before the first negative r_k, since later ones are noise.
/// </remarks>
static class Autocorrelation
{
    /// <summary>Autocorrelation at a lag, deviations from the overall mean, as NIST StRD certifies it. 0 for a constant series.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The lag is negative or leaves no pair.</exception>
    public static double At(ReadOnlySpan<double> values, int lag)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(lag);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(lag, values.Length);
        var mean = Mean(values);
        var squares = Products(values, mean, 0);
        return squares == 0 ? 0 : Products(values, mean, lag) / squares;
    }

    /// <summary>Factor by which correlation multiplies the variance of the mean, at least 1: n / n_eff.</summary>
    /// <exception cref="ArgumentException">Fewer than two values.</exception>
    public static double VarianceInflation(ReadOnlySpan<double> values)
    {
        AtLeastTwo(values);
        var mean = Mean(values);
        var squares = Products(values, mean, 0);
        if (squares == 0) return 1;
        var inflation = 1.0;
        for (var lag = 1; lag < values.Length; lag++)
        {
            var r = Products(values, mean, lag) / squares;
            if (r < 0) break;
            inflation += 2 * (1 - (double)lag / values.Length) * r;
        }
        return inflation;
    }

    /// <summary>Standard error of the mean, in the unit of the values, with the correlation counted.</summary>
    /// <exception cref="ArgumentException">Fewer than two values.</exception>
    public static double StandardErrorOfMean(ReadOnlySpan<double> values)
    {
        AtLeastTwo(values);
        var variance = Products(values, Mean(values), 0) / (values.Length - 1);
        return Math.Sqrt(variance / values.Length * VarianceInflation(values));
    }

    static void AtLeastTwo(ReadOnlySpan<double> values)
    {
        if (values.Length < 2) throw new ArgumentException("Two values or more are needed to speak of repeatability.", nameof(values));
    }

    static double Mean(ReadOnlySpan<double> values)
    {
        var sum = 0.0;
        foreach (var value in values) sum += value;
        var mean = sum / values.Length;
        // A second pass takes out what the first lost to rounding; the certified data sets need it.
        var rest = 0.0;
        foreach (var value in values) rest += value - mean;
        return mean + rest / values.Length;
    }

    static double Products(ReadOnlySpan<double> values, double mean, int lag)
    {
        var sum = 0.0;
        for (var i = lag; i < values.Length; i++) sum += (values[i] - mean) * (values[i - lag] - mean);
        return sum;
    }
}
