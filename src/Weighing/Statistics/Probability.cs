using MathNet.Numerics;

namespace ScaleLink.Weighing.Statistics;

/// <summary>Student's t and Fisher's F, from the regularised incomplete beta function.</summary>
public static class Probability
{
    // From here on t and the normal distribution agree beyond any use made of them here.
    const double ManyDegrees = 1e6;

    /// <summary>
    /// The factor k that makes k standard uncertainties a two-sided interval of the given coverage.
    /// Source: JCGM 100:2008 (GUM) Table G.2.
    /// </summary>
    /// <param name="coverage">Between 0 and 1, for example 0.95.</param>
    /// <param name="degreesOfFreedom">Above zero, need not be whole; infinity for many.</param>
    public static double CoverageFactor(double coverage, double degreesOfFreedom)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(coverage, 0);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(coverage, 1);
        if (!(degreesOfFreedom > 0))
            throw new ArgumentOutOfRangeException(nameof(degreesOfFreedom), degreesOfFreedom, "Must be above zero.");
        if (degreesOfFreedom > ManyDegrees)
            return Math.Sqrt(2) * SpecialFunctions.ErfInv(coverage);

        var outside = 1 - coverage;
        double low = 0, high = 1;
        while (OutsideT(high, degreesOfFreedom) > outside)
            (low, high) = (high, 2 * high);
        for (var i = 0; i < 200 && high - low > 1e-14 * high; i++)
        {
            var middle = 0.5 * (low + high);
            if (OutsideT(middle, degreesOfFreedom) > outside)
                low = middle;
            else
                high = middle;
        }
        return 0.5 * (low + high);
    }

    /// <summary>Chance that Student's t lies further from zero than <paramref name="t"/>, either side.</summary>
    public static double OutsideT(double t, double degreesOfFreedom) => degreesOfFreedom > ManyDegrees
        ? SpecialFunctions.Erfc(Math.Abs(t) / Math.Sqrt(2))
        : SpecialFunctions.BetaRegularized(0.5 * degreesOfFreedom, 0.5, degreesOfFreedom / (degreesOfFreedom + t * t));

    /// <summary>Chance that Fisher's F exceeds <paramref name="f"/>.</summary>
    public static double AboveF(double f, double numerator, double denominator) => f <= 0
        ? 1
        : SpecialFunctions.BetaRegularized(0.5 * denominator, 0.5 * numerator, denominator / (denominator + numerator * f));
}
