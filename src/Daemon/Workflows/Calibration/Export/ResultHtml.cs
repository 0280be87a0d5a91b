using ScaleLink.Daemon.Reports;
using Wire = ScaleLink.Api.V1;
using static ScaleLink.Daemon.Workflows.Calibration.Export.ReportWords;

namespace ScaleLink.Daemon.Workflows.Calibration.Export;

/// <summary>What a calibration procedure came to, as the part of its report that is read first.</summary>
internal static class ResultHtml
{
    public static void Write(Html html, Wire.ProcedureResult result)
    {
        if (result.Conclusion.Length > 0)
            html.Text("h2", "Conclusion").Text("p", result.Conclusion);
        if (result.Refusals.Count > 0)
            html.Text("h2", "Why there is no calibration").Table(["code", "what", "remedy"], result.Refusals.Select(r => (IReadOnlyList<string>)[r.Code, r.Message, r.Remedy]));
        if (result.Calibration is { } calibration)
            Calibration(html, result, calibration);
        Findings(html, result);
    }

    private static void Calibration(Html html, Wire.ProcedureResult result, Wire.CalibrationSummary c)
    {
        html.Text("h2", "Calibration").Facts(
            ("identity", c.Id), ("span", $"{Exact(c.SpanKgPerCount)} kg per count at zero"),
            ("curvature", result.CurveOrder > 1 ? $"{Exact(c.CurvatureKgPerCount2)} kg per count squared" : "none: a straight line is enough"),
            ("zero at the calibration procedure", $"{Number(c.ZeroCounts, "0.0")} counts"), ("trim of the cells", string.Join(", ", c.CellTrim.Select(t => Number(t, "0.00000")))),
            ("capacity; calibrated to", $"{Number(c.CapacityKg, "0.#")} kg; {Number(c.CalibratedToKg, "0.0##")} kg"), ("place", $"{c.Place}, {Number(c.GravityMps2, "0.00000")} m/s²"),
            ("temperature", c.HasTemperatureC ? $"{Number(c.TemperatureC, "0.0")} °C" : ""),
            ("uncertainty", $"±{Number(c.ExpandedUncertaintyKg)} kg at {Number(c.ExpandedAtKg, "0.0")} kg, coverage 95 % (Student's t)"));
        html.Text("h2", "Before and after").Table(["#load, kg", "#read before, kg", "#difference, kg", "#expanded uncertainty, kg"],
            result.BeforeAfter.Select(b => (IReadOnlyList<string>)[Number(b.NowKg), Number(b.BeforeKg), Signed(b.BeforeKg - b.NowKg), $"±{Number(b.NowExpandedKg)}"]));
        Budget(html, result);
    }

    private static void Budget(Html html, Wire.ProcedureResult result)
    {
        var names = result.Budgets.SelectMany(b => b.Terms.Select(t => t.Name)).Distinct().ToList();
        List<string> heads = ["standard uncertainty, kg", .. result.Budgets.Select(b => $"#at {Number(b.LoadKg, "0.0")} kg")];
        IReadOnlyList<string> Row(string name, Func<Wire.LoadBudget, string> cell) => [name, .. result.Budgets.Select(cell)];
        html.Text("h2", "Uncertainty budget").Table(heads,
        [
            .. names.Select(name => Row(name, b => b.Terms.FirstOrDefault(t => t.Name == name) is { } term ? Number(term.StandardUncertaintyKg, "0.0000") : "")),
            Row("combined", b => Number(b.StandardUncertaintyKg, "0.0000")),
            Row("degrees of freedom", b => b.HasDegreesOfFreedom ? Number(b.DegreesOfFreedom, "0") : "many"),
            Row("expanded, 95 %", b => $"±{Number(b.ExpandedKg)}"),
        ]);
    }

    private static void Findings(Html html, Wire.ProcedureResult result)
    {
        if (result.Characteristics is { } found)
            html.Text("h2", "What the pad shows (definitions of OIML R 60-1:2021)").Facts(
                ("non-linearity", At(found.NonLinearity)), ("hysteresis", At(found.Hysteresis)), ("repeatability", At(found.Repeatability)),
                ("zero return", found.HasZeroReturnKg ? $"{Signed(found.ZeroReturnKg)} kg" : ""),
                ("creep in 30 minutes", At(found.Creep)), ("of it after 20 minutes", found.HasLateCreepKg ? $"{Signed(found.LateCreepKg)} kg" : ""));
        if (result.AccuracyClass.Length > 0)
            html.Text("p", $"Accuracy class, OIML R 76-1:2006: {result.AccuracyClass}. Errors of the repetitions against the limits of initial verification, at the temperature and place of the calibration procedure; a comparison for the pad, no verification.");
        if (result.Trim is { } trim)
            html.Text("p", $"Corner-load test: places differed by {Number(trim.BeforeKg)} kg before and by {Number(trim.AfterKg)} kg after trimming"
                + (trim.SparePlaces == 0 ? "; there were no more places than cells, so that the second figure shows nothing." : "."));
        if (result.Shifts.Count > 0)
            html.Text("h2", "Moved since the calibration before").Table(["what", "#kg", "#expanded uncertainty (95 %), kg"], result.Shifts.Select(s => (IReadOnlyList<string>)[s.What, Signed(s.Kg), $"±{Number(s.ExpandedKg)}"]));
        if (result.Ballast.Count > 0)
            html.Text("h2", "Ballast as found").Table(["piece", "#kg", "#standard uncertainty, kg"], result.Ballast.Select(b => (IReadOnlyList<string>)[b.Label, Number(b.Kg), Number(b.StandardUncertaintyKg)]));
        if (result.TakenAsUsual.Count > 0)
            html.Text("p", $"Neither tested nor stated, and in the uncertainty as is usual for pads of cells of class C3: {string.Join(", ", result.TakenAsUsual)}.");
        if (result.NotCovered.Count > 0)
            html.Text("p", $"Neither tested nor stated, and so not in the uncertainty: {string.Join(", ", result.NotCovered)}.");
    }

    private static string At(Wire.FoundAt? found) => found is null ? "" : $"{Signed(found.Kg)} kg at {Number(found.LoadKg, "0.0")} kg";
}
