namespace ScaleLink.Weighing.SiteCheck;

/// <summary>Zeros that move between the zeroing and the reading, and how often to zero so that they do little.</summary>
static class DriftPart
{
    static readonly double[] Intervals = [60, 30, 20, 10, 5];
    // Of what the crew wants to believe, a drift may take so much before zeroing more often pays. Common practice, no published source.
    const double Share = 0.25;

    public static (SizedPart Part, double Minutes) Of(SiteCheckQuestion asked, IReadOnlyList<PadOutcome> pads, Corners slope)
    {
        var found = pads.ToDictionary(p => p.Corner);
        var minutes = Intervals.FirstOrDefault(m => Size(m).HalfWidth <= Share * asked.WantedPercent, Intervals[^1]);
        var size = Size(minutes);
        var worst = Corners.All.ToArray().MaxBy(c => Math.Abs(slope[c] * found[c].DriftKgPer10Min.Estimate));
        Sentence words = $"the zero of {worst} moves most, {Kg(found[worst].DriftKgPer10Min.Estimate):+0.00} in ten minutes; counted for {minutes:0} minutes";
        // Two zeros, and one reading may come at once and the other late.
        return (new(SiteCheckPartKind.Drift, worst, size, size with { Standard = Math.Sqrt(2) * size.Standard }, words, Remedy(found[worst], asked.Limits, minutes)), minutes);

        PartSize Size(double minutes)
        {
            var known = Corners.From(c => slope[c] * minutes / 10 * found[c].DriftKgPer10Min.Estimate);
            var uncertainty = Corners.From(c => slope[c] * double.Hypot(minutes / 10 * found[c].AheadKgPer10Min, found[c].NoiseKg));
            return new(known.Sum, Math.Sqrt(uncertainty.Dot(uncertainty)));
        }
    }

    static string Remedy(PadOutcome pad, SiteCheckLimits limits, double minutes) =>
        (Math.Abs(pad.UnlikeK ?? 0) > limits.UnlikeK || Math.Abs(pad.WarmerK ?? 0) > limits.WarmerK ? $"Shade {pad.Corner} and wait; until then zero" : "Zero")
        + $" again at least every {minutes:0} minutes, the car off the pads.";
}
