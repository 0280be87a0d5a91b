namespace ScaleLink.Weighing.SiteCheck;

/// <summary>
/// One part before it is put into words: what is known and not corrected, and one standard uncertainty, both in percent of cross
/// weight. What is known and left in is added to the interval as it is (JCGM 100:2008, F.2.4.5, from memory).
/// </summary>
readonly record struct PartSize(double Known, double Standard)
{
    // About 95 %; JCGM 100:2008, 6.3.3.
    const double Factor = 2;

    public double HalfWidth => Math.Abs(Known) + Factor * Standard;

    /// <summary>All of them at once. Constant known parts keep their signs against each other; a drift may stand anywhere on its way.</summary>
    public static double Together(double constantKnown, double driftKnown, IEnumerable<double> standards) =>
        Math.Abs(constantKnown) + Math.Abs(driftKnown) + Factor * Math.Sqrt(standards.Sum(s => s * s));
}

/// <summary>A part with its sizes; a size of null cannot be told.</summary>
sealed record SizedPart(SiteCheckPartKind Kind, Corner? Worst, PartSize? Reading, PartSize? Change, Sentence Words, string Remedy)
{
    public SiteCheckPart Told => new(Kind, Worst, Reading?.HalfWidth, Change?.HalfWidth, Words, Remedy);
}
