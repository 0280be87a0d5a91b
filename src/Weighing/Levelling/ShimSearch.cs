using ScaleLink.Weighing.Statics;

namespace ScaleLink.Weighing.Levelling;

/// <summary>
/// The fewest shims that bring four pads within a spread, among those the ones that leave the least warp, which alone moves cross weight, and among
/// those the thinnest; exact over all stacks of up to
/// <see cref="MostPerPad"/> shims at hand that raise no pad more than the thickest shim above the highest one.
/// </summary>
static class ShimSearch
{
    /// <summary>More loose shims than this under one pad are no footing.</summary>
    public const int MostPerPad = 5;

    // The flattest that the shims can do is told to a hundredth of a millimetre.
    const double Finest = 0.01;

    // n of the design, section 4, for wheels at the corners of a rectangle.
    static readonly Corners Rectangle = new(0.25, -0.25, -0.25, 0.25);

    /// <summary>Finds the shims.</summary>
    /// <param name="heightsMm">Pad heights, mm.</param>
    /// <param name="shims">What is at hand: at most six thicknesses.</param>
    /// <param name="spreadMm">Highest minus lowest pad allowed, mm.</param>
    /// <param name="contacts">Where the wheels of the car stand; without one four pads of a rectangle.</param>
    /// <returns>The plan; when nothing at hand levels the pads, the flattest there is, with a finding.</returns>
    /// <exception cref="DiagnosticException">A height, shim or spread is not usable.</exception>
    public static ShimPlan Find(in Corners heightsMm, IReadOnlyList<ShimSet> shims, double spreadMm = 0.5, Contacts? contacts = null)
    {
        var heights = heightsMm;
        if (shims.Count > 6 || shims.Any(s => !(s.ThicknessMm > 0 && s.Pieces >= 0)) || !(spreadMm > 0) || Corners.All.ToArray().Any(c => !(Math.Abs(heights[c]) < 200)))
            throw new DiagnosticException(new Diagnostic(PatchCodes.InputUnusable, "A pad height, a shim or the spread is not usable.",
                "Give heights within 200 mm, at most six thicknesses above zero, and a spread above zero."));
        var stacks = ShimStack.ForPads(heights, shims);
        var pattern = contacts is { } known ? 0.25 * known.WarpPattern : Rectangle;
        if (Best(stacks, shims, pattern, spreadMm) is { } levelled)
            return Plan(heights, levelled, shims, null);
        double fails = spreadMm, works = Spread(stacks.Select(s => s[0]));
        while (works - fails > Finest)
        {
            var middle = (works + fails) / 2;
            (works, fails) = Best(stacks, shims, pattern, middle) is null ? (works, middle) : (middle, fails);
        }
        var flattest = Best(stacks, shims, pattern, works)!;
        return Plan(heights, flattest, shims, new(PatchCodes.ShimsDoNotReach, $"The shims at hand leave the pads {Mm(Spread(flattest)):0.00} apart; {Mm(spreadMm):0.00} was asked for.",
            "Get thinner or more shims, adjust the feet, or weigh with what remains and its stated effect."));
    }

    // Every pad top may be the lowest one: then all others must lie within the spread above it.
    static ShimStack[]? Best(IReadOnlyList<IReadOnlyList<ShimStack>> stacks, IReadOnlyList<ShimSet> shims, in Corners pattern, double spread)
    {
        ShimStack[]? best = null;
        foreach (var lowest in stacks.SelectMany(s => s).Select(s => s.TopMm).Distinct())
        {
            var within = stacks.Select(s => s.Where(t => t.TopMm >= lowest - ShimStack.Alike && t.TopMm <= lowest + spread + ShimStack.Alike).ToArray()).ToArray();
            if (within.All(w => w.Length > 0))
                best = new ShimChoice(within, shims, pattern, best).Best;
        }
        return best;
    }

    static double Spread(IEnumerable<ShimStack> stacks) => stacks.Max(s => s.TopMm) - stacks.Min(s => s.TopMm);

    static ShimPlan Plan(Corners heights, ShimStack[] chosen, IReadOnlyList<ShimSet> shims, Diagnostic? finding)
    {
        var tops = Corners.From(c => heights[c] + chosen[(int)c].ThicknessMm);
        return new(new(List(0), List(1), List(2), List(3)), tops - Corners.Same(tops.Sum / 4), Spread(chosen), finding is null, finding);

        IReadOnlyList<double> List(int pad) => [.. shims.SelectMany((s, i) => Enumerable.Repeat(s.ThicknessMm, chosen[pad].Counts[i])).OrderDescending()];
    }
}
