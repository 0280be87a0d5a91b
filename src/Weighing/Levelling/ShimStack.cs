namespace ScaleLink.Weighing.Levelling;

/// <summary>Some shims under one pad.</summary>
/// <param name="Counts">How many of each thickness at hand.</param>
/// <param name="Pieces">How many together.</param>
/// <param name="ThicknessMm">How thick together.</param>
/// <param name="TopMm">Height of the pad on them.</param>
sealed record ShimStack(int[] Counts, int Pieces, double ThicknessMm, double TopMm)
{
    // Sums of thicknesses that differ by rounding only are the same height.
    public const double Alike = 1e-6;

    /// <summary>All stacks that each pad may get, fewest pieces first.</summary>
    public static IReadOnlyList<IReadOnlyList<ShimStack>> ForPads(Corners heights, IReadOnlyList<ShimSet> shims)
    {
        var highest = Math.Max(Math.Max(heights.LF, heights.RF), Math.Max(heights.LR, heights.RR));
        var ceiling = highest + shims.Select(s => s.ThicknessMm).DefaultIfEmpty().Max();
        return [.. Corners.All.ToArray().Select(c => Under(heights[c], ceiling, shims))];
    }

    static List<ShimStack> Under(double height, double ceiling, IReadOnlyList<ShimSet> shims)
    {
        List<ShimStack> found = [new(new int[shims.Count], 0, 0, height)];
        for (var i = 0; i < shims.Count; i++)
            foreach (var stack in found.ToList())
                for (var n = 1; n <= Math.Min(shims[i].Pieces, ShimSearch.MostPerPad - stack.Pieces); n++)
                {
                    var thickness = stack.ThicknessMm + n * shims[i].ThicknessMm;
                    if (height + thickness > ceiling + Alike)
                        break;
                    var counts = (int[])stack.Counts.Clone();
                    counts[i] = n;
                    found.Add(new(counts, stack.Pieces + n, thickness, height + thickness));
                }
        return [.. found.OrderBy(s => s.Pieces).ThenBy(s => s.ThicknessMm)];
    }
}
