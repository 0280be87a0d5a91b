using ScaleLink.Api.V1;

namespace ScaleLink.Client.Readings;

/// <summary>
/// How far two readings of the same car on the same pads may differ. The calibration errs alike in both and drops out of
/// their difference.
/// </summary>
internal static class Repeatability
{
    private const string FromCalibration = "calibration";

    /// <summary>U for 95 % of cross weight without the part that calibration has in it, percent; all of it where the budget is not told.</summary>
    public static double? OfCrossWeight(Loads loads)
    {
        if (Coverage.Expanded(loads.CrossWeightPercent) is not { } whole)
            return null;
        if (loads.TotalKg is null || loads.Corners.Any(c => c.Budget.All(p => p.Name == FromCalibration)))
            return whole;
        var variance = loads.Corners.Sum(c => Math.Pow(Slope(c.Corner, loads), 2) * c.Budget.Where(p => p.Name != FromCalibration).Sum(p => p.StandardUncertaintyKg * p.StandardUncertaintyKg));
        return Math.Min(whole, Coverage.Factor(double.PositiveInfinity) * Math.Sqrt(variance));
    }

    // Percent a kilogram: the derivative of 100 (RF + LR) / total.
    private static double Slope(Corner corner, Loads loads) =>
        ((corner is Corner.Rf or Corner.Lr ? 100 : 0) - loads.CrossWeightPercent.Value) / loads.TotalKg.Value;
}
