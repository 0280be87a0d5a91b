using MathNet.Numerics.Distributions;
using ScaleLink.Api.V1;

namespace ScaleLink.Client.Readings;

/// <summary>From a standard uncertainty to the interval that is shown.</summary>
public static class Coverage
{
    private const double UpperTail = 0.975;

    /// <summary>
    /// U, half the width of the interval that contains the value with 95 % probability, in the unit of the value. Absent when
    /// nothing is claimed. Student's t with few degrees of freedom, the normal distribution with many.
    /// Source: JCGM 100:2008 (GUM), G.3 and Table G.2.
    /// </summary>
    public static double? Expanded(Quantity? quantity) =>
        quantity is { HasStandardUncertainty: true } q ? Factor(q.HasDegreesOfFreedom ? q.DegreesOfFreedom : double.PositiveInfinity) * q.StandardUncertainty : null;

    /// <summary>Coverage factor for 95 % and a number of degrees of freedom, at least 1.</summary>
    public static double Factor(double degreesOfFreedom) => double.IsFinite(degreesOfFreedom)
        ? StudentT.InvCDF(0, 1, Math.Max(1, degreesOfFreedom), UpperTail)
        : Normal.InvCDF(0, 1, UpperTail);
}
