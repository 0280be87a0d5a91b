using MathNet.Numerics.Distributions;

namespace ScaleLink.Weighing.Settling.Noise;

/// <summary>Coverage factor k of an expanded uncertainty U = k u, from Student's t (GUM annex G).</summary>
public static class CoverageFactor
{
    /// <summary>k so that the interval ±k u covers the share <paramref name="coverage"/>.</summary>
    /// <param name="degreesOfFreedom">Degrees of freedom, 1 or more, not necessarily whole; infinity for the normal distribution.</param>
    /// <param name="coverage">Share, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside these limits.</exception>
    public static double For(double degreesOfFreedom, double coverage = 0.95)
    {
        if (!(degreesOfFreedom >= 1))
            throw new ArgumentOutOfRangeException(nameof(degreesOfFreedom), degreesOfFreedom, "At least one degree of freedom is needed.");
        if (!(coverage is > 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(coverage), coverage, "Coverage is a share between 0 and 1.");
        var upper = (1 + coverage) / 2;
        return double.IsPositiveInfinity(degreesOfFreedom) ? Normal.InvCDF(0, 1, upper) : StudentT.InvCDF(0, 1, degreesOfFreedom, upper);
    }
}
