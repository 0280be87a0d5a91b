namespace ScaleLink.Weighing.Settling;

/// <summary>The shares of the total in percent, and their derivatives with respect to the four loads, percent per kg.</summary>
readonly record struct LoadShares(Corners Loads, double Total)
{
    const double LeastTotalKg = 1;

    /// <summary>The shares, or null when the total is too small to be divided.</summary>
    public static LoadShares? Of(in Corners loads) => loads.Sum >= LeastTotalKg ? new(loads, loads.Sum) : null;

    public double CrossWeight => 100 * (Loads.RF + Loads.LR) / Total;

    public double Front => 100 * (Loads.LF + Loads.RF) / Total;

    public double Left => 100 * (Loads.LF + Loads.LR) / Total;

    public Corners CrossWeightSlope => Slope(new(0, 1, 1, 0), CrossWeight);

    public Corners FrontSlope => Slope(new(1, 1, 0, 0), Front);

    public Corners LeftSlope => Slope(new(1, 0, 1, 0), Left);

    Corners Slope(in Corners counted, double share) => 1 / Total * (100 * counted - Corners.Same(share));
}
