using ScaleLink.Weighing.Statics;

namespace ScaleLink.Weighing.Levelling;

/// <summary>What a patch that is not flat does to a car.</summary>
/// <param name="LoadsKg">Change of the four loads, kg.</param>
/// <param name="CrossWeightPercent">Change of cross weight, percent.</param>
/// <param name="FrontWeightPercent">Change of front weight, percent.</param>
/// <param name="LeftSideWeightPercent">Change of left-side weight, percent.</param>
sealed record PatchEffect(Corners LoadsKg, double CrossWeightPercent, double FrontWeightPercent, double LeftSideWeightPercent)
{
    /// <summary>The effect of pads at these heights, mm.</summary>
    public static PatchEffect Of(CarStatics statics, in Corners heightsMm)
    {
        var change = statics.FromPads(heightsMm);
        var perKg = 100 / statics.TotalKg;
        return new(change, perKg * Shares.CrossWeight.Dot(change), perKg * Shares.Front.Dot(change), perKg * Shares.Left.Dot(change));
    }

    /// <summary>(RF + LR), kg.</summary>
    public double CrossWeightKg => Shares.CrossWeight.Dot(LoadsKg);

    /// <summary>(LF + RF), kg.</summary>
    public double FrontKg => Shares.Front.Dot(LoadsKg);

    /// <summary>(LF + LR), kg.</summary>
    public double LeftKg => Shares.Left.Dot(LoadsKg);
}
