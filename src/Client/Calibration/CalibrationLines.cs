using ScaleLink.Api.V1;
using ScaleLink.Client.Runtime;
using static ScaleLink.Measure.Sentences.Arguments;

namespace ScaleLink.Client.Calibration;

/// <summary>Calibrations in lines for a terminal of 80 columns.</summary>
internal static class CalibrationLines
{
    public static IEnumerable<string> List(IReadOnlyList<CalibrationSummary> calibrations, Glyphs glyphs)
    {
        if (calibrations.Count == 0)
            yield return "No calibrations: no pad has been calibrated, and none is connected.";
        foreach (var c in calibrations)
            yield return $"{(c.InEffect ? glyphs.Settled : ' ')} {Number(c),-8} {PeerText.Clean(c.SerialNumber, 16),-16} {About(c, glyphs)}";
        if (calibrations.Any(c => c.InEffect))
            yield return $"{glyphs.Settled} in effect";
    }

    public static IEnumerable<string> Show(CalibrationDetail detail, Glyphs glyphs)
    {
        var c = detail.Calibration;
        yield return $"Calibration {Number(c)}, identity {PeerText.Clean(c.Id, 64)}";
        yield return glyphs.Line($"pad {PeerText.Clean(c.SerialNumber, 40)}, capacity {Kg(c.CapacityKg):0.#}, {About(c, glyphs)}");
        yield return $"span {glyphs.Kg(c.SpanKgPerCount, "0.000000000")} {glyphs.MassSign()} per count, curvature {glyphs.Kg(c.CurvatureKgPerCount2, "0.###e+00")}, zero {c.ZeroCounts:0.0} counts, trims {string.Join(" ", c.CellTrim.Select(t => $"{t:0.00000}"))}";
        yield return $"place {PeerText.Clean(c.Place, 40)}, {c.GravityMps2:0.00000} m/s2{(c.HasTemperatureC ? $", {c.TemperatureC:0.0} degrees C" : "")}";
        if (detail.Result is { } result)
            foreach (var line in ResultLines.Of(result, glyphs))
                yield return line;
        foreach (var point in detail.Points)
            yield return $"{point.Number,3} {ProcedureWords.Part(point.Stage, point.Repetition, point.WayDown)}: {ProcedureWords.Point(point, glyphs)}";
    }

    public static IEnumerable<string> Compare(CalibrationComparison found, Glyphs glyphs)
    {
        yield return $"before {Number(found.Before)}, {About(found.Before, glyphs)}";
        yield return $"now    {Number(found.Now)}, {About(found.Now, glyphs)}";
        yield return $"load {glyphs.MassSign()}     before {glyphs.MassSign()}   difference   now, 95 %";
        foreach (var at in found.Loads)
            yield return $"{glyphs.Kg(at.NowKg, "0.00"),8}   {glyphs.Kg(at.BeforeKg, "0.000"),9}   {glyphs.Kg(at.BeforeKg - at.NowKg, "+0.000;-0.000"),10}   {glyphs.PlusMinus}{glyphs.Kg(at.NowExpandedKg, "0.000")}";
        foreach (var shift in found.Shifts)
            yield return glyphs.Line($"{PeerText.Clean(shift.What, 20)} moved by {Kg(shift.Kg):+0.000} {glyphs.PlusMinus}{BareKg(shift.ExpandedKg):0.000} (95 %): look for a hit, an overload, a changed cell, other masses");
        if (found.Shifts.Count == 0)
            yield return "Nothing moved beyond what both leave uncertain.";
    }

    public static ComparisonJson Json(CalibrationComparison found) => new(
        CalibrationJson.Of(found.Before)!, CalibrationJson.Of(found.Now)!,
        [.. found.Shifts.Select(s => new ShiftJson(PeerText.Clean(s.What, 20), s.Kg, s.ExpandedKg))],
        [.. found.Loads.Select(l => new BeforeAfterJson(l.BeforeKg, l.NowKg, l.NowExpandedKg))]);

    /// <summary>The name that lists, screens and reports share: the number of the procedure that made it.</summary>
    public static string Number(CalibrationSummary c) => c.ProcedureId.Length > 0 ? $"No. {PeerText.Clean(c.ProcedureId, 10)}" : "bay file";

    private static string About(CalibrationSummary c, Glyphs glyphs) => c.Standing == CalibrationStanding.Calibrated
        ? glyphs.Line($"calibrated {c.Time.LocalDay()} to {Kg(c.CalibratedToKg):0.#} {glyphs.PlusMinus}{BareKg(c.ExpandedUncertaintyKg):0.000} (95 %), {PeerText.Clean(c.Who, 16)}{(c.Readopted ? ", again" : "")}")
        : glyphs.Line($"from the bay file, nominal only, {glyphs.PlusMinus}{Kg(c.ExpandedUncertaintyKg):0.0} (95 %) at {Kg(c.ExpandedAtKg):0}");
}
