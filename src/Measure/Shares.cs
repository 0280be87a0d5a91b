namespace ScaleLink.Measure;

/// <summary>What four loads say together: the one definition of each share, as the corners that it adds up.</summary>
public static class Shares
{
    /// <summary>Cross weight: RF and LR.</summary>
    public static Corners CrossWeight { get; } = new(0, 1, 1, 0);

    /// <summary>Front weight: LF and RF.</summary>
    public static Corners Front { get; } = new(1, 1, 0, 0);

    /// <summary>Left-side weight: LF and LR.</summary>
    public static Corners Left { get; } = new(1, 0, 1, 0);

    /// <summary>Left-right load difference of the front axle.</summary>
    public static Corners FrontLeftRight { get; } = new(1, -1, 0, 0);

    /// <summary>Left-right load difference of the rear axle.</summary>
    public static Corners RearLeftRight { get; } = new(0, 0, 1, -1);

    /// <summary>Whether a corner belongs to the diagonal that cross weight counts.</summary>
    public static bool IsOfCrossWeight(Corner corner) => CrossWeight[corner] != 0;

    /// <summary>A share of the total, percent.</summary>
    /// <param name="part">One of the parts above.</param>
    /// <param name="loads">kg, their sum above zero.</param>
    public static double Percent(in Corners part, in Corners loads) => 100 * part.Dot(loads) / loads.Sum;

    /// <summary>Change of a share, percent, for one kg more at each corner.</summary>
    public static Corners Slope(in Corners part, in Corners loads) => 100 / loads.Sum * (part - Corners.Same(part.Dot(loads) / loads.Sum));

    /// <summary>
    /// What one diagonal carries, kg: the total times its share. The uncertainties of total and share are taken as independent, for they are a sum
    /// and a difference of the same four loads.
    /// </summary>
    /// <param name="totalKg">Sum of the loads.</param>
    /// <param name="crossWeightPercent">Cross weight.</param>
    /// <param name="ofCrossWeight">RF and LR; else LF and RR.</param>
    public static Value DiagonalKg(Value totalKg, Value crossWeightPercent, bool ofCrossWeight)
    {
        var share = (ofCrossWeight ? crossWeightPercent.Estimate : 100 - crossWeightPercent.Estimate) / 100;
        var uncertainty = totalKg.StandardUncertainty is { } t && crossWeightPercent.StandardUncertainty is { } c
            ? double.Hypot(share * t, totalKg.Estimate * c / 100)
            : default(double?);
        return new(totalKg.Estimate * share, uncertainty);
    }
}
