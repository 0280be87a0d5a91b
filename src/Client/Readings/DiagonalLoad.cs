using ScaleLink.Api.V1;

namespace ScaleLink.Client.Readings;

/// <summary>What one diagonal carries.</summary>
internal static class DiagonalLoad
{
    /// <summary>
    /// Load of RF + LR (or of LF + RR), kg: total times its share. Uncertainties of total and share are taken as independent,
    /// for they are a sum and a difference of the same four loads.
    /// </summary>
    public static Quantity? Of(Quantity? total, Quantity? crossWeight, bool ofCrossWeight)
    {
        if (total is null || crossWeight is null)
            return null;
        var share = (ofCrossWeight ? crossWeight.Value : 100 - crossWeight.Value) / 100;
        var load = new Quantity { Value = total.Value * share };
        if (total.HasStandardUncertainty && crossWeight.HasStandardUncertainty)
            load.StandardUncertainty = double.Hypot(share * total.StandardUncertainty, total.Value * crossWeight.StandardUncertainty / 100);
        return load;
    }
}
