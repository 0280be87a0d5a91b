using System.Globalization;

namespace ScaleLink.Weighing.SiteCheck;

/// <summary>
/// Judges a place for weighing by a watch over its empty, zeroed pads: to what size can a cross weight be believed here, and a
/// change of it, and what to fix first. Repeatability of the car's own settling is no matter of the place and not in it.
/// </summary>
static class SiteCheckJudge
{
    /// <summary>The judgement.</summary>
    /// <exception cref="DiagnosticException">SL-588: too little was seen. SL-594: a load or a wanted size is not usable.</exception>
    public static SiteCheckReport Judge(SiteCheckQuestion asked)
    {
        ArgumentNullException.ThrowIfNull(asked);
        var seconds = Check(asked);
        var slope = Shares.Slope(Shares.CrossWeight, asked.LoadsKg);
        var pads = PadOutcomes.Of([.. asked.Pads.OrderBy(p => p.Corner)]);
        var (drift, minutes) = DriftPart.Of(asked, pads, slope);
        List<SizedPart> parts = [drift, .. HeightParts.Of(asked, slope), .. PadParts.Of(asked, pads, slope)];
        var reading = Together(parts, p => p.Reading);
        var change = Together(parts, p => p.Change);
        return new(
            reading <= asked.WantedPercent ? SiteCheckVerdict.Weigh : change <= asked.WantedPercent ? SiteCheckVerdict.Compare : SiteCheckVerdict.Remedy,
            reading, change, minutes, asked.WantedPercent, seconds,
            [.. parts.Select(p => p.Told).OrderByDescending(p => p.ReadingPercent ?? double.PositiveInfinity)],
            pads, DriftEffect.Of(pads, slope), [.. SiteCheckFindings.Of(asked, pads, parts)]);
    }

    static double? Together(List<SizedPart> parts, Func<SizedPart, PartSize?> size) => parts.Any(p => size(p) is null)
        ? null
        : PartSize.Together(
            parts.Where(p => p.Kind != SiteCheckPartKind.Drift).Sum(p => size(p)!.Value.Known),
            parts.Where(p => p.Kind == SiteCheckPartKind.Drift).Sum(p => size(p)!.Value.Known),
            parts.Select(p => size(p)!.Value.Standard));

    static double Check(SiteCheckQuestion asked)
    {
        foreach (var corner in Corners.All)
            if (!(asked.LoadsKg[corner] > 0 && double.IsFinite(asked.LoadsKg[corner])) || asked.Pads.Count(p => p.Corner == corner) != 1)
                throw new DiagnosticException(new Diagnostic(SiteCheckCodes.InputUnusable, $"The load expected at {corner} is {Kg(asked.LoadsKg[corner])}.", "Give the total of the car, kg, above zero."));
        if (!(asked.WantedPercent > 0 && double.IsFinite(asked.WantedPercent)))
            throw new DiagnosticException(new Diagnostic(SiteCheckCodes.InputUnusable, $"The wanted size is {asked.WantedPercent} %.", "Give the change of cross weight that is to be believed, percent, above zero."));
        var seconds = asked.Pads.Min(p => p.Moments.Count > 0 ? p.Moments[^1].Seconds - p.Moments[0].Seconds : 0);
        var least = asked.Limits.ShortestSeconds;
        return seconds >= least && asked.Pads.All(p => p.Moments.Count >= least / 2)
            ? seconds
            : throw new DiagnosticException(new Diagnostic(SiteCheckCodes.TooShort, string.Create(CultureInfo.InvariantCulture, $"The pads were seen for {seconds:0} s; at least {least:0} s are needed."), "Watch longer, best the whole ten minutes."));
    }
}
