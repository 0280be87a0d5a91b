namespace ScaleLink.Weighing.Levelling;

/// <summary>One stack for each pad from one box of shims: fewest pieces, then least warp left, then thinnest, better than a plan already known.</summary>
sealed class ShimChoice
{
    readonly ShimStack[][] stacks;
    readonly Corners pattern;
    readonly int[] left;
    readonly ShimStack[] chosen = new ShimStack[4];
    // What the pads from one on can add at least and at most.
    readonly ShimScore[] least = new ShimScore[5];
    readonly double[] mostWarp = new double[5];
    ShimScore best;

    /// <param name="stacks">What each pad may get, fewest pieces first.</param>
    /// <param name="shims">The box.</param>
    /// <param name="pattern">Warp for 1 mm under each pad, mm.</param>
    /// <param name="known">A plan to be bettered; null when there is none.</param>
    public ShimChoice(ShimStack[][] stacks, IReadOnlyList<ShimSet> shims, in Corners pattern, ShimStack[]? known)
    {
        (this.stacks, this.pattern) = (stacks, pattern);
        left = [.. shims.Select(s => s.Pieces)];
        for (var pad = 3; pad >= 0; pad--)
        {
            var warps = stacks[pad].Select(s => Warp(pad, s)).ToList();
            least[pad] = least[pad + 1] + new ShimScore(stacks[pad].Min(s => s.Pieces), warps.Min(), stacks[pad].Min(s => s.ThicknessMm));
            mostWarp[pad] = mostWarp[pad + 1] + warps.Max();
        }
        Best = known;
        if (known is not null)
            best = Whole(known);
        Choose(0, default);
    }

    /// <summary>The best so far; null when the box does not hold any.</summary>
    public ShimStack[]? Best { get; private set; }

    void Choose(int pad, ShimScore soFar)
    {
        if (pad == 4)
        {
            Best = [.. chosen];
            best = Whole(chosen);
            return;
        }
        foreach (var stack in stacks[pad])
        {
            var score = soFar + new ShimScore(stack.Pieces, Warp(pad, stack), stack.ThicknessMm);
            // Stacks come fewest pieces first, so those after one with too many have too many too.
            if (Best is not null && score.Pieces + least[pad + 1].Pieces > best.Pieces)
                return;
            if (!MayBeBetter(pad + 1, score) || !Holds(stack))
                continue;
            Take(stack, 1);
            chosen[pad] = stack;
            Choose(pad + 1, score);
            Take(stack, -1);
        }
    }

    // With the best that the pads to come could add, each for itself.
    bool MayBeBetter(int pad, ShimScore score)
    {
        if (Best is null)
            return true;
        var (low, high) = (score.WarpMm + least[pad].WarpMm, score.WarpMm + mostWarp[pad]);
        var warp = low > 0 ? low : high < 0 ? -high : 0;
        return new ShimScore(score.Pieces + least[pad].Pieces, warp, score.ThicknessMm + least[pad].ThicknessMm).IsBetterThan(best);
    }

    double Warp(int pad, ShimStack stack) => pattern[(Corner)pad] * stack.TopMm;

    ShimScore Whole(ShimStack[] all)
    {
        var sum = all.Select((s, pad) => new ShimScore(s.Pieces, Warp(pad, s), s.ThicknessMm)).Aggregate((a, b) => a + b);
        return sum with { WarpMm = Math.Abs(sum.WarpMm) };
    }

    bool Holds(ShimStack stack)
    {
        for (var i = 0; i < left.Length; i++)
            if (stack.Counts[i] > left[i])
                return false;
        return true;
    }

    void Take(ShimStack stack, int times)
    {
        for (var i = 0; i < left.Length; i++)
            left[i] -= times * stack.Counts[i];
    }
}
