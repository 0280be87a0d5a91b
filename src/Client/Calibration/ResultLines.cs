using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;

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
            yield return glyphs.Say(PeerText.Clean(result.Conclusion, LongestText));
        foreach (var refusal in result.Refusals)
            yield return $"No calibration. {DiagnosticReader.Read(refusal)}";
        if (result.Calibration is { } calibration)
            foreach (var line in Calibration(result, calibration, glyphs))
                yield return line;
        if (result.AccuracyClass.Length > 0)
            yield return $"Accuracy class, no verification: {PeerText.Clean(result.AccuracyClass, LongestText)}";
        foreach (var shift in result.Shifts)
            yield return $"Moved since the last calibration procedure: {PeerText.Clean(shift.What, 20)} by {shift.Kg:+0.000;-0.000} kg {glyphs.PlusMinus}{shift.ExpandedKg:0.000} (95 %). Find out why before you adopt.";
        if (result.Trim is { } trim)
            yield return $"Corner load: places differ by {trim.BeforeKg:0.000} kg before and {trim.AfterKg:0.000} kg after trimming the cells";
        if (result.TakenAsUsual.Count > 0)
            yield return $"Not tested, taken as usual: {PeerText.Clean(string.Join(", ", result.TakenAsUsual), LongestText)}";
        if (result.NotCovered.Count > 0)
            yield return $"Not tested, not in the uncertainty: {PeerText.Clean(string.Join(", ", result.NotCovered), LongestText)}";
    }

    private static IEnumerable<string> Calibration(ProcedureResult result, CalibrationSummary calibration, Glyphs glyphs)
    {
        var change = result.Before is { SpanKgPerCount: not 0 } before ? $", {100 * (calibration.SpanKgPerCount / before.SpanKgPerCount - 1):+0.000;-0.000} % from before" : "";
        yield return $"Calibration {Short(calibration.Id)}: {calibration.SpanKgPerCount:0.000000000} kg per count{change}, {(result.CurveOrder > 1 ? "curved" : "a straight line")}";
        yield return $"Calibrated to {calibration.CalibratedToKg:0.#} kg, {glyphs.PlusMinus}{calibration.ExpandedUncertaintyKg:0.000} kg there (95 %)";
        yield return "load kg     before kg   difference   after, 95 %";
        foreach (var at in result.BeforeAfter)
            yield return $"{at.NowKg,8:0.00}   {at.BeforeKg,9:0.000}   {at.BeforeKg - at.NowKg,10:+0.000;-0.000}   {glyphs.PlusMinus}{at.NowExpandedKg:0.000}";
        if (result.Budgets.LastOrDefault() is { } top)
            yield return $"Largest parts at {top.LoadKg:0} kg: "
                + string.Join(", ", top.Terms.OrderByDescending(t => t.StandardUncertaintyKg).Take(ShownTerms).Select(t => $"{PeerText.Clean(t.Name, 20)} {t.StandardUncertaintyKg:0.000}")) + " kg";
    }

    /// <summary>The first digits of a calibration's identity.</summary>
    public static string Short(string id) => PeerText.Clean(id.Length > ShortDigits ? id[..ShortDigits] : id, ShortDigits);
}
