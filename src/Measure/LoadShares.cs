namespace ScaleLink.Measure;

/// <summary>The shares of four loads in percent, and their derivatives with respect to the loads, percent per kg.</summary>
/// <param name="Loads">kg, their sum above zero.</param>
public readonly record struct LoadShares(Corners Loads)
{
    private const double LeastTotalKg = 1;

    /// <summary>The shares, or null when the total is too small to be divided.</summary>
    public static LoadShares? Of(in Corners loads) => loads.Sum >= LeastTotalKg ? new(loads) : null;

    /// <summary>(RF + LR) / total, percent.</summary>
    public double CrossWeight => Shares.Percent(Shares.CrossWeight, Loads);

    /// <summary>(LF + RF) / total, percent.</summary>
    public double Front => Shares.Percent(Shares.Front, Loads);

    /// <summary>(LF + LR) / total, percent.</summary>
    public double Left => Shares.Percent(Shares.Left, Loads);

    /// <summary>Change of the cross weight with each load, percent per kg.</summary>
    public Corners CrossWeightSlope => Shares.Slope(Shares.CrossWeight, Loads);

    /// <summary>Change of the front weight with each load, percent per kg.</summary>
    public Corners FrontSlope => Shares.Slope(Shares.Front, Loads);

    /// <summary>Change of the left-side weight with each load, percent per kg.</summary>
    public Corners LeftSlope => Shares.Slope(Shares.Left, Loads);
}
