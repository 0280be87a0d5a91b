namespace ScaleLink.Weighing.Levelling;

/// <summary>One stack for each pad from one box of shims: fewest pieces, then thinnest, better than a plan already known.</summary>
sealed class ShimChoice
{
    readonly ShimStack[][] stacks;
    readonly int[] left;
    readonly ShimStack[] chosen = new ShimStack[4];

    public ShimChoice(ShimStack[][] stacks, IReadOnlyList<ShimSet> shims, ShimStack[]? known)
    {
        this.stacks = stacks;
        Best = known;
        left = [.. shims.Select(s => s.Pieces)];
        Choose(0, 0, 0);
    }

    /// <summary>The best so far; null when the box does not hold any.</summary>
    public ShimStack[]? Best { get; private set; }

    void Choose(int pad, int pieces, double thickness)
    {
        if (pad == 4)
        {
            Best = [.. chosen];
            return;
        }
        foreach (var stack in stacks[pad])
        {
            // Stacks come fewest pieces first, so those after a hopeless one are hopeless too.
            if (!Better(pad, pieces + stack.Pieces, thickness + stack.ThicknessMm))
                return;
            if (!Holds(stack))
                continue;
            Take(stack, 1);
            chosen[pad] = stack;
            Choose(pad + 1, pieces + stack.Pieces, thickness + stack.ThicknessMm);
            Take(stack, -1);
        }
    }

    bool Better(int pad, int pieces, double thickness)
    {
        if (Best is null)
            return true;
        for (var i = pad + 1; i < 4; i++)
            (pieces, thickness) = (pieces + stacks[i][0].Pieces, thickness + stacks[i][0].ThicknessMm);
        var (bestPieces, bestThickness) = (Best.Sum(s => s.Pieces), Best.Sum(s => s.ThicknessMm));
        return pieces < bestPieces || (pieces == bestPieces && thickness < bestThickness - ShimStack.Alike);
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
