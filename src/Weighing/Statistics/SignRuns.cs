namespace ScaleLink.Weighing.Statistics;

/// <summary>
/// How often residuals change sign along the load: few unbroken runs mean a bow that the model leaves in. The runs test
/// of Wald and Wolfowitz (1940), normal approximation (from memory).
/// </summary>
/// <param name="Runs">Unbroken stretches of one sign.</param>
/// <param name="Expected">What independent residuals would show on average.</param>
/// <param name="Deviation">Runs minus expected, in standard deviations; strongly negative is a pattern.</param>
sealed record SignRuns(int Runs, double Expected, double Deviation)
{
    /// <summary>Residuals in the order of the load; those of exactly zero are passed over.</summary>
    public static SignRuns Of(IEnumerable<double> residualsAlongLoad)
    {
        var positive = residualsAlongLoad.Where(r => r != 0).Select(r => r > 0).ToList();
        if (positive.Count == 0)
            return new SignRuns(0, 0, 0);

        var runs = 1 + positive.Zip(positive.Skip(1)).Count(pair => pair.First != pair.Second);
        double above = positive.Count(p => p), all = positive.Count, product = 2 * above * (all - above);
        var expected = 1 + product / all;
        var variance = all > 1 ? product * (product - all) / (all * all * (all - 1)) : 0;
        return new SignRuns(runs, expected, variance > 0 ? (runs - expected) / Math.Sqrt(variance) : 0);
    }
}
