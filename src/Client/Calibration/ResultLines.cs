using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;
using static ScaleLink.Measure.Sentences.Arguments;

namespace ScaleLink.Client.Calibration;

/// <summary>What a calibration procedure came to, in lines for a terminal of 80 columns.</summary>
internal static class ResultLines
{
    private const int LongestText = 300;
    private const int ShownTerms = 4;
    private const int ShortDigits = 12;

    /// <summary>Refusals or the calibration, then before and after, then what the pad shows.</summary>
    public static IEnumerable<string> Of(ProcedureResult result, Glyphs glyphs)
    {
        if (result.Conclusion.Length > 0)
            yield return glyphs.Tell(result.ConclusionSaid, LongestText);
        foreach (var refusal in result.Refusals)
            yield return $"No calibration. {glyphs.Tell(DiagnosticReader.Read(refusal))}";
        if (result.Calibration is { } calibration)
            foreach (var line in Calibration(result, calibration, glyphs))
                yield return line;
        if (result.AccuracyClass.Length > 0)
            yield return $"Accuracy class, no verification: {glyphs.Tell(result.GradeSaid, LongestText)}";
        foreach (var shift in result.Shifts)
            yield return glyphs.Line($"Moved since the last calibration procedure: {PeerText.Clean(shift.What, 20)} by {Kg(shift.Kg):+0.000} {glyphs.PlusMinus}{BareKg(shift.ExpandedKg):0.000} (95 %). Find out why before you adopt.");
        if (result.Trim is { } trim)
            yield return glyphs.Line($"Corner load: places differ by {Kg(trim.BeforeKg):0.000} before and {Kg(trim.AfterKg):0.000} after trimming the cells");
        if (result.TakenAsUsual.Count > 0)
            yield return $"Not tested, taken as usual: {PeerText.Clean(string.Join(", ", result.TakenAsUsual), LongestText)}";
        if (result.NotCovered.Count > 0)
            yield return $"Not tested, not in the uncertainty: {PeerText.Clean(string.Join(", ", result.NotCovered), LongestText)}";
    }

    private static IEnumerable<string> Calibration(ProcedureResult result, CalibrationSummary calibration, Glyphs glyphs)
    {
        var change = result.Before is { SpanKgPerCount: not 0 } before ? $", {100 * (calibration.SpanKgPerCount / before.SpanKgPerCount - 1):+0.000;-0.000} % from before" : "";
        yield return $"Calibration {Short(calibration.Id)}: {glyphs.Kg(calibration.SpanKgPerCount, "0.000000000")} {glyphs.MassSign()} per count{change}, {(result.CurveOrder > 1 ? "curved" : "a straight line")}";
        yield return glyphs.Line($"Calibrated to {Kg(calibration.CalibratedToKg):0.#}, {glyphs.PlusMinus}{Kg(calibration.ExpandedUncertaintyKg):0.000} there (95 %)");
        yield return $"load {glyphs.MassSign()}     before {glyphs.MassSign()}   difference   after, 95 %";
        foreach (var at in result.BeforeAfter)
            yield return $"{glyphs.Kg(at.NowKg, "0.00"),8}   {glyphs.Kg(at.BeforeKg, "0.000"),9}   {glyphs.Kg(at.BeforeKg - at.NowKg, "+0.000;-0.000"),10}   {glyphs.PlusMinus}{glyphs.Kg(at.NowExpandedKg, "0.000")}";
        if (result.Budgets.LastOrDefault() is { } top)
            yield return glyphs.Line($"Largest parts at {Kg(top.LoadKg):0}: ")
                + string.Join(", ", top.Terms.OrderByDescending(t => t.StandardUncertaintyKg).Take(ShownTerms).Select(t => $"{PeerText.Clean(t.Name, 20)} {glyphs.Kg(t.StandardUncertaintyKg, "0.000")}")) + $" {glyphs.MassSign()}";
    }

    /// <summary>The first digits of a calibration's identity.</summary>
    public static string Short(string id) => PeerText.Clean(id.Length > ShortDigits ? id[..ShortDigits] : id, ShortDigits);
}
