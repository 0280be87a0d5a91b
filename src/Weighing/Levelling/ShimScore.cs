namespace ScaleLink.Weighing.Levelling;

/// <summary>What a choice of shims costs, in the order in which it counts.</summary>
/// <param name="Pieces">How many.</param>
/// <param name="WarpMm">What they leave of the part of the heights that moves cross weight, mm.</param>
/// <param name="ThicknessMm">How thick together.</param>
readonly record struct ShimScore(int Pieces, double WarpMm, double ThicknessMm)
{
    public static ShimScore operator +(ShimScore a, ShimScore b) => new(a.Pieces + b.Pieces, a.WarpMm + b.WarpMm, a.ThicknessMm + b.ThicknessMm);

    /// <summary>Fewer pieces, then less warp, then thinner. Sums that differ by rounding only are alike.</summary>
    public bool IsBetterThan(in ShimScore other) =>
        Pieces != other.Pieces ? Pieces < other.Pieces
        : Math.Abs(WarpMm - other.WarpMm) > ShimStack.Alike ? WarpMm < other.WarpMm
        : ThicknessMm < other.ThicknessMm - ShimStack.Alike;
}
