namespace ScaleLink.Weighing.Settling;

/// <summary>The shares of the total in percent, and their derivatives with respect to the four loads, percent per kg.</summary>
public readonly record struct LoadShares(Corners Loads, double Total)
{
    const double LeastTotalKg = 1;

    /// <summary>The shares, or null when the total is too small to be divided.</summary>
    public static LoadShares? Of(in Corners loads) => loads.Sum >= LeastTotalKg ? new(loads, loads.Sum) : null;

    /// <summary>(RF + LR) / total, percent.</summary>
    public double CrossWeight => 100 * (Loads.RF + Loads.LR) / Total;

    /// <summary>(LF + RF) / total, percent.</summary>
    public double Front => 100 * (Loads.LF + Loads.RF) / Total;

    /// <summary>(LF + LR) / total, percent.</summary>
    public double Left => 100 * (Loads.LF + Loads.LR) / Total;

    /// <summary>Change of the cross weight with each load, percent per kg.</summary>
    public Corners CrossWeightSlope => Slope(new(0, 1, 1, 0), CrossWeight);

    /// <summary>Change of the front share with each load, percent per kg.</summary>
    public Corners FrontSlope => Slope(new(1, 1, 0, 0), Front);

    /// <summary>Change of the left share with each load, percent per kg.</summary>
    public Corners LeftSlope => Slope(new(1, 0, 1, 0), Left);

    Corners Slope(in Corners counted, double share) => 1 / Total * (100 * counted - Corners.Same(share));
}
