using ScaleLink.Weighing.WorkSessions.Planning;
using System.Globalization;
using System.Text;
using ScaleLink.Daemon.Reports;
using ScaleLink.Daemon.Workflows.WorkSessions.Standings;
using ScaleLink.Daemon.Workflows.WorkSessions.Steps;
using ScaleLink.Measure;
using ScaleLink.Weighing.Balance;

namespace ScaleLink.Daemon.Workflows.WorkSessions.Export;

/// <summary>A session as a sheet for printing: one HTML page that needs nothing else. Whatever people typed is escaped.</summary>
internal static class SessionSheet
{
    // As screens show it: enough to find the one on record.
    private const int ShownOfHash = 12;

    private const string Style =
        "body{font:11pt/1.4 sans-serif;max-width:180mm;margin:8mm auto;color:#111;background:#fff}h1{font-size:16pt;margin:0 0 2mm}h2{font-size:12pt;margin:6mm 0 1mm}"
        + "table{border-collapse:collapse;width:100%;font-variant-numeric:tabular-nums}th,td{border-bottom:1px solid #bbb;padding:1mm 2mm;text-align:right}th:first-child,td:first-child{text-align:left}"
        + ".verdict{font-size:13pt;font-weight:bold;margin:3mm 0}.small{font-size:9pt;color:#444}svg{width:100%;height:auto}@media print{body{margin:0}}@page{size:A4;margin:12mm}";

    /// <summary>The page.</summary>
    /// <param name="view">The session.</param>
    /// <param name="remarks">What a reader of its record has to know, of times and entries; empty: nothing.</param>
    public static string Of(SessionView view, string remarks = "")
    {
        ArgumentNullException.ThrowIfNull(view);
        var session = view.Session;
        var page = new StringBuilder();
        page.Append("<!DOCTYPE html><html lang=\"en\"><head><meta charset=\"utf-8\"><title>").Append(Html.Escape($"{session.Car.Name}, session {session.Id}"))
            .Append("</title><style>").Append(Style).Append("</style></head><body><h1>").Append(Html.Escape(session.Car.Name)).Append("</h1>");
        Paragraph(page, "small", $"Session {session.Id}, bay {session.Start.Bay}, begun {LocalTime.Minute(session.StartedAt)} by {session.Who}"
            + (session.EndedAt is { } ended ? $", ended {LocalTime.Minute(ended)}" : ", still open") + (session.Start.Title.Length > 0 ? $". {session.Start.Title}" : ""));
        if (remarks.Length > 0)
            Paragraph(page, "small", remarks);
        Paragraph(page, "verdict", session.End is { } end ? end.Words + (end.Because.Length > 0 ? $" ({end.Because})" : "") : Standing.Of(session)?.Words ?? "No reading was taken.");
        Paragraph(page, "small", FormattableString.Invariant($"Cross weight = (RF + LR) / total; target {new TargetBand(session.Start.TargetPercent, session.Start.TolerancePercent).PercentText}."));
        if (session.Weighings.Count > 0)
        {
            page.Append("<h2>Convergence</h2>").Append(TraceDrawing.Of(session));
            Readings(page, session);
            LastLoads(page, session);
        }

        Checks(page, "Preparation", view.Preparation);
        if (session.Known is not null)
            Checks(page, "Last steps", view.LastSteps);
        if (session.Cautioned.Count > 0)
            Paragraph(page, "small", $"Cautions read by {string.Join(", ", session.Cautioned.OrderBy(c => c.Value).Select(c => $"{c.Key}, {LocalTime.Minute(c.Value)}"))}.");
        Paragraph(page, "small", $"Back to the baseline: {CrewWords.Turns(-1 * session.TurnsSinceBaseline)}. {Cautions.Perches}");
        Paragraph(page, "small", Cautions.Track);
        Paragraph(page, "small", Cautions.NotForTrade);
        return page.Append("</body></html>").ToString();
    }

    private static void Readings(StringBuilder page, WorkSession session)
    {
        page.Append("<h2>Readings</h2>");
        Head(page, "Turned before it", "LF kg", "RF kg", "LR kg", "RR kg", "Cross weight %", "Predicted %");
        foreach (var weighing in session.Weighings)
        {
            var loads = weighing.Step.Reading.LoadsKg;
            Row(page, "td",
                [Label(weighing), .. Corners.All.ToArray().Select(c => Show(loads[c], "0.0")), Show(weighing.CrossWeightPercent, "0.00"),
                    weighing.Adjustment?.Predicted is { CrossWeightPercent: var p } ? ValueText.Of(p, Unit.Percent).Bare : ""]);
        }

        page.Append("</table>");
        foreach (var weighing in session.Weighings.Where(c => c.Step.Reading.Patch.Count > 0))
            Paragraph(page, "small", $"{weighing.Number}: corrected for the patch: {string.Join(", ", weighing.Step.Reading.Patch.Select(p => p.Words))}");
        foreach (var (number, correction) in session.Weighings.Where(c => c.Correction is not null).Select(c => (c.Number, c.Correction!)))
            Paragraph(page, "small", $"{number}: written as {CrewWords.Turns(correction.Recorded)}; put right by {correction.Who}, {LocalTime.Minute(correction.At)}");
        foreach (var finding in session.Weighings.SelectMany(c => c.Step.Findings.Select(f => $"{c.Number}: {f}")))
            Paragraph(page, "small", finding);
    }

    private static void LastLoads(StringBuilder page, WorkSession session)
    {
        var last = session.Weighings[^1].Step.Reading;
        var whole = last.Whole;
        page.Append("<h2>Loads at the end</h2>");
        Head(page, "", "value ± U (95 %)");
        foreach (var (name, unit, value) in new (string, Unit, Value)[]
        {
            ("LF", Unit.Kilogram, last.LoadKg(Corner.LF)), ("RF", Unit.Kilogram, last.LoadKg(Corner.RF)), ("LR", Unit.Kilogram, last.LoadKg(Corner.LR)), ("RR", Unit.Kilogram, last.LoadKg(Corner.RR)),
            ("Total", Unit.Kilogram, whole.TotalKg), ("Cross weight (RF + LR) / total", Unit.Percent, whole.CrossWeightPercent), ("Front weight (LF + RF) / total", Unit.Percent, whole.FrontWeightPercent),
            ("Left-side weight (LF + LR) / total", Unit.Percent, whole.LeftSideWeightPercent), ("Front left-right load difference, LF - RF", Unit.Kilogram, whole.FrontLeftRightDifferenceKg), ("Rear left-right load difference, LR - RR", Unit.Kilogram, whole.RearLeftRightDifferenceKg),
        })
            Row(page, "td", name, ValueText.Of(value, unit).Full);
        page.Append("</table>");
        if (last.NominalOnly is { Count: > 0 } nominalOnly)
            Paragraph(page, "small", $"Nominal only pads, not checked with known masses: {string.Join(", ", nominalOnly)}.");
        Paragraph(page, "small", $"Calibrations: {string.Join(", ", last.Calibrations.Select(c => c.Length > ShownOfHash ? c[..ShownOfHash] : c))}. Net turns: {CrewWords.Turns(session.TurnsSinceBaseline)}.");
    }

    private static void Checks(StringBuilder page, string title, IReadOnlyList<CheckView> checks)
    {
        if (checks.Count == 0)
            return;
        page.Append("<h2>").Append(title).Append("</h2>");
        Head(page, "Check", "", "Found", "Note");
        foreach (var check in checks)
            Row(page, "td", check.Item.Title, check.Mark is { Together: true } ? "ticked together, not individually confirmed" : check.IsDone ? "done" : check.Mark is { Skipped: true } ? "skipped" : "open", check.Mark is { Value.Length: > 0 } mark ? mark.Value : check.Seen?.Value ?? "", check.Mark?.Note ?? "");
        page.Append("</table>");
    }

    private static string Label(SessionWeighing weighing) =>
        $"{weighing.Number}. " + (weighing.Step.Kind switch
        {
            WeighingKind.Baseline => "baseline",
            WeighingKind.Verification => "bars connected again",
            _ when weighing.Adjustment is { } a => CrewWords.Turns(a.Turns),
            _ when weighing.ChangeName.Length > 0 => weighing.ChangeName,
            _ => "settled again",
        });

    private static void Head(StringBuilder page, params IEnumerable<string> titles)
    {
        page.Append("<table>");
        Row(page, "th", titles);
    }

    private static void Row(StringBuilder page, string cell, params IEnumerable<string> texts)
    {
        page.Append("<tr>");
        foreach (var text in texts)
            page.Append('<').Append(cell).Append('>').Append(Html.Escape(text)).Append("</").Append(cell).Append('>');
        page.Append("</tr>");
    }

    private static void Paragraph(StringBuilder page, string kind, string text) => page.Append("<p class=\"").Append(kind).Append("\">").Append(Html.Escape(text)).Append("</p>");

    private static string Show(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
