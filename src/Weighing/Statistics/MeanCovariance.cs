namespace ScaleLink.Weighing.Statistics;

/// <summary>Means of quantities read together, with the covariance of those means. Source: JCGM 100:2008 (GUM) 5.2.3.</summary>
/// <param name="Means">One a quantity.</param>
/// <param name="Covariance">Quantities squared; the squares of the standard uncertainties stand on the diagonal.</param>
/// <param name="Readings">How many readings each mean is made of.</param>
sealed record MeanCovariance(IReadOnlyList<double> Means, double[,] Covariance, int Readings)
{
    /// <summary>From simultaneous readings: each inner list holds one quantity, all of the same length, at least two.</summary>
    public static MeanCovariance Of(IReadOnlyList<IReadOnlyList<double>> quantities)
    {
        ArgumentNullException.ThrowIfNull(quantities);
        var n = quantities[0].Count;
        if (n < 2 || quantities.Any(q => q.Count != n))
            throw new ArgumentException("Quantities read together need equally many readings, at least two.", nameof(quantities));

        double[] means = [.. quantities.Select(q => q.Average())];
        var covariance = new double[means.Length, means.Length];
        for (var a = 0; a < means.Length; a++)
            for (var b = 0; b < means.Length; b++)
                covariance[a, b] = Enumerable.Range(0, n)
                    .Sum(i => (quantities[a][i] - means[a]) * (quantities[b][i] - means[b])) / (n * (n - 1.0));
        return new MeanCovariance(means, covariance, n);
    }

    /// <summary>Standard uncertainty of one mean.</summary>
    public double StandardUncertainty(int quantity) => Math.Sqrt(Covariance[quantity, quantity]);

    /// <summary>Correlation of two means.</summary>
    public double Correlation(int a, int b) => Covariance[a, b] / (StandardUncertainty(a) * StandardUncertainty(b));
}
