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

        // The tail is convex and t's factor exceeds the normal one, so Newton's steps from there never overshoot.
        var outside = 1 - coverage;
        var factor = Math.Sqrt(2) * SpecialFunctions.ErfInv(coverage);
        for (var i = 0; i < 100; i++)
        {
            var step = (OutsideT(factor, degreesOfFreedom) - outside) / (2 * DensityOfT(factor, degreesOfFreedom));
            factor += step;
            if (step <= 1e-13 * factor)
                break;
        }
        return factor;
    }

    /// <summary>Chance that Student's t lies further from zero than <paramref name="t"/>, either side.</summary>
    public static double OutsideT(double t, double degreesOfFreedom) => degreesOfFreedom > ManyDegrees
        ? SpecialFunctions.Erfc(Math.Abs(t) / Math.Sqrt(2))
        : SpecialFunctions.BetaRegularized(0.5 * degreesOfFreedom, 0.5, degreesOfFreedom / (degreesOfFreedom + t * t));

    /// <summary>Chance that Fisher's F exceeds <paramref name="f"/>.</summary>
    public static double AboveF(double f, double numerator, double denominator) => f <= 0
        ? 1
        : SpecialFunctions.BetaRegularized(0.5 * denominator, 0.5 * numerator, denominator / (denominator + numerator * f));

    static double DensityOfT(double t, double degreesOfFreedom) => Math.Exp(
        SpecialFunctions.GammaLn(0.5 * (degreesOfFreedom + 1)) - SpecialFunctions.GammaLn(0.5 * degreesOfFreedom)
        - 0.5 * (degreesOfFreedom + 1) * Math.Log(1 + t * t / degreesOfFreedom)) / Math.Sqrt(degreesOfFreedom * Math.PI);
}
