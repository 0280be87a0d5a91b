using ScaleLink.Api.V1;
using ScaleLink.Measure;
using Corner = ScaleLink.Api.V1.Corner;

namespace ScaleLink.Client.Readings;

/// <summary>
/// How far two readings of the same car on the same pads may differ. The calibration and the zeros of the inclinometers err alike in both
/// and drop out of their difference; where the wheels stand on the pads does not.
/// </summary>
internal static class Repeatability
{
    private static readonly string[] Alike = ["calibration", "masses or stated span", "alike on all pads", "tilt"];

    /// <summary>U for 95 % of cross weight without the parts that err alike in every reading, percent; all of it where the budget is not told.</summary>
    public static double? OfCrossWeight(Loads loads)
    {
        if (loads.CrossWeightPercent?.AsValue.Expanded is not { } whole)
            return null;
        if (loads.TotalKg is null || loads.Corners.Any(c => c.Budget.All(p => Alike.Contains(p.Name))))
            return whole;
        var variance = loads.Corners.Sum(c => Math.Pow(Slope(c.Corner, loads), 2) * c.Budget.Where(p => !Alike.Contains(p.Name)).Sum(p => p.StandardUncertaintyKg * p.StandardUncertaintyKg));
        return Math.Min(whole, Coverage.Factor() * Math.Sqrt(variance));
    }

    // Percent a kilogram: the derivative of 100 (RF + LR) / total.
    private static double Slope(Corner corner, Loads loads) =>
        ((corner.IsOfCrossWeight() ? 100 : 0) - loads.CrossWeightPercent.Estimate) / loads.TotalKg.Estimate;
}
