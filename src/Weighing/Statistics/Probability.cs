using MathNet.Numerics;

namespace ScaleLink.Weighing.Statistics;

/// <summary>Student's t and Fisher's F, from the regularised incomplete beta function.</summary>
static class Probability
{
    // From here on t and the normal distribution agree beyond any use made of them here.
    const double ManyDegrees = 1e6;

    /// <summary>Chance that Student's t lies further from zero than <paramref name="t"/>, either side.</summary>
    public static double OutsideT(double t, double degreesOfFreedom) => degreesOfFreedom > ManyDegrees
        ? SpecialFunctions.Erfc(Math.Abs(t) / Math.Sqrt(2))
        : SpecialFunctions.BetaRegularized(0.5 * degreesOfFreedom, 0.5, degreesOfFreedom / (degreesOfFreedom + t * t));

    /// <summary>Chance that Fisher's F exceeds <paramref name="f"/>.</summary>
    public static double AboveF(double f, double numerator, double denominator) => f <= 0
        ? 1
        : SpecialFunctions.BetaRegularized(0.5 * denominator, 0.5 * numerator, denominator / (denominator + numerator * f));
}
