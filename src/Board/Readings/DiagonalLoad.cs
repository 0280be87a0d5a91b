using ScaleLink.Api.V1;

namespace ScaleLink.Board.Readings;

/// <summary>What one diagonal carries.</summary>
internal static class DiagonalLoad
{
    /// <summary>Load of RF + LR, kg.</summary>
    public static Quantity? OfRfLr(Loads? loads) => Of(loads, share => share);

    /// <summary>Load of LF + RR, kg.</summary>
    public static Quantity? OfLfRr(Loads? loads) => Of(loads, share => 1 - share);

    // Total times share. Their uncertainties are taken as independent: a sum and a difference of the same four loads.
    private static Quantity? Of(Loads? loads, Func<double, double> part)
    {
        if (loads is not { TotalKg: { } total, CrossWeightPercent: { } cross })
            return null;
        var share = part(cross.Value / 100);
        var load = new Quantity { Value = total.Value * share };
        if (total.HasStandardUncertainty && cross.HasStandardUncertainty)
            load.StandardUncertainty = double.Hypot(share * total.StandardUncertainty, total.Value * cross.StandardUncertainty / 100);
        return load;
    }
}
