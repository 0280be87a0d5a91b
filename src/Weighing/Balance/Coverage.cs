using MathNet.Numerics.Distributions;

namespace ScaleLink.Weighing.Balance;

/// <summary>Coverage factors, two-sided (GUM, JCGM 100:2008, annex G, table G.2).</summary>
static class Coverage
{
    public static double Factor(double probability, double? degreesOfFreedom) => degreesOfFreedom is { } few and < 1e6
        ? StudentT.InvCDF(0, 1, few, (1 + probability) / 2)
        : Normal.InvCDF(0, 1, (1 + probability) / 2);
}
