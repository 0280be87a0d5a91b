namespace ScaleLink.Weighing.Balance;

/// <summary>Which corners a figure adds up, as weights.</summary>
static class Patterns
{
    public static readonly Corners CrossWeight = new(0, 1, 1, 0);
    public static readonly Corners Front = new(1, 1, 0, 0);
    public static readonly Corners Left = new(1, 0, 1, 0);
    public static readonly Corners FrontSideDifference = new(1, -1, 0, 0);
    public static readonly Corners RearSideDifference = new(0, 0, 1, -1);

    /// <summary>A share of the total, percent.</summary>
    public static double Share(in Corners part, in Corners loads) => 100 * part.Dot(loads) / loads.Sum;

    /// <summary>Change of the share, percent, for one kg more at each corner.</summary>
    public static Corners ShareSlope(in Corners part, in Corners loads) =>
        100 / loads.Sum * (part - Corners.Same(part.Dot(loads) / loads.Sum));
}
