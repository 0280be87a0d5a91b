using ScaleLink.Measure.Distributions;

namespace ScaleLink.Measure;

/// <summary>
/// Coverage factors: by how much one standard uncertainty is widened so that the interval holds the value with a stated probability. The one
/// definition for every face. Source: JCGM 100:2008 (GUM), G.3 and table G.2; degrees of freedom that are not whole are cut to the whole number
/// below, which never understates (G.4.1).
/// </summary>
public static class Coverage
{
    /// <summary>What is meant where no probability is named.</summary>
    public const double Usual = 0.95;

    private static readonly double[] Remembered = new double[StudentDistribution.Long + 1];
    private static readonly double RememberedMany = NormalDistribution.TwoSided(Usual);

    /// <summary>The factor k of U = k u, two-sided.</summary>
    /// <param name="degreesOfFreedom">Above zero; fewer than one count as one. Null or infinite: many.</param>
    /// <param name="probability">Between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside these limits.</exception>
    public static double Factor(double? degreesOfFreedom = null, double probability = Usual)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(probability);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(probability, 1);
        if (degreesOfFreedom is not { } freedom || double.IsPositiveInfinity(freedom))
            return probability == Usual ? RememberedMany : NormalDistribution.TwoSided(probability);
        if (!(freedom > 0))
            throw new ArgumentOutOfRangeException(nameof(degreesOfFreedom), freedom, "Degrees of freedom are above zero.");
        var whole = Math.Max(1, Math.Floor(freedom));
        if (probability != Usual || whole > StudentDistribution.Long)
            return StudentDistribution.TwoSided(whole, probability);
        // Written twice by two threads it is the same number.
        return Remembered[(int)whole] is > 0 and var known ? known : Remembered[(int)whole] = StudentDistribution.TwoSided(whole, probability);
    }
}
