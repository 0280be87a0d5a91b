namespace ScaleLink.Weighing.Settling;

/// <summary>What every claim can be asked.</summary>
static class LoadClaims
{
    /// <summary>One standard uncertainty of each load, kg.</summary>
    public static Corners PadByPad(this ILoadClaim claim) => new(
        Math.Sqrt(claim.VarianceOf(new(1, 0, 0, 0))), Math.Sqrt(claim.VarianceOf(new(0, 1, 0, 0))),
        Math.Sqrt(claim.VarianceOf(new(0, 0, 1, 0))), Math.Sqrt(claim.VarianceOf(new(0, 0, 0, 1))));
}
