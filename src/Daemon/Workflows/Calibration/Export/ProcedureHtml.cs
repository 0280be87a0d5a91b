using ScaleLink.Daemon.Reports;
using ScaleLink.Measure;
using static ScaleLink.Daemon.Workflows.Calibration.Export.ReportWords;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.Calibration.Export;

/// <summary>A report of one calibration procedure to print: two pages of A4 at most for an ordinary calibration procedure.</summary>
internal static class ProcedureHtml
{
    /// <summary>Shared by the reports of pads.</summary>
    public const string Style = """
        body{font:14px/1.4 system-ui,sans-serif;color:#111;background:#fff;max-width:52em;margin:2em auto;padding:0 1em}
        h1{font-size:1.5em;margin:0}h2{font-size:1.1em;margin:1.4em 0 .4em;border-bottom:1px solid #999}
        table{border-collapse:collapse;width:100%}th,td{padding:.15em .5em;text-align:left;border-bottom:1px solid #ddd}.n{text-align:right;font-variant-numeric:tabular-nums}
        dl{display:grid;grid-template-columns:max-content 1fr;gap:.1em 1.2em;margin:.6em 0}dt{color:#555}dd{margin:0;overflow-wrap:anywhere}
        svg{width:100%;font:11px system-ui,sans-serif}.axis{stroke:#111}.grid{stroke:#ddd}.band{fill:#ddd}.limit{fill:none;stroke:#111;stroke-dasharray:8 6}.up{fill:#111}.down{fill:#fff;stroke:#111}
        aside{border:2px solid #111;padding:.6em 1em;margin:1em 0}thead{display:table-header-group}tr,svg,aside{break-inside:avoid}
        @media print{body{margin:0;max-width:none;font-size:10pt}@page{size:A4;margin:15mm}}
        """;

    public static string Write(ProcedureSheet sheet)
    {
        var procedure = sheet.Procedure;
        var html = new Html().Raw($"<!doctype html>\n<html lang=\"en\">\n<head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width\">\n")
            .Text("title", $"Calibration procedure {procedure.ProcedureId} of pad {procedure.SerialNumber}").Raw($"<style>{Style}</style></head>\n<body>\n")
            .Text("h1", $"Calibration procedure of pad {procedure.SerialNumber}")
            .Facts(
                ("number", $"{procedure.ProcedureId}"), ("bay and place", $"{sheet.Bay}, {procedure.Corner.ToString().ToUpperInvariant()}"), ("outcome", State(procedure.State)),
                ("begun", $"{procedure.BegunAt.LocalSecond()} by {procedure.BegunBy}"), ("ended", Ended(procedure)), ("remark", procedure.Ending?.Reason ?? ""),
                ("report made", LocalTime.Second(sheet.Made)))
            .Raw("<aside>").Text("span", ProcedureSheet.NoCertificate).Raw("</aside>\n");
        if (procedure.Result is { } result)
            ResultHtml.Write(html, result);
        return Points(html, procedure).Raw("</body></html>\n").ToString();
    }

    private static string Ended(Wire.ProcedureView procedure) => procedure.Ending is { } ending ? $"{ending.Time.LocalSecond()} by {ending.Who}" : "";

    private static Html Points(Html html, Wire.ProcedureView procedure) => html
        .Text("h2", "Masses")
        .Table(["mass", "#kg", "#limits, kg", "#standard uncertainty, kg", "lot"],
            procedure.Masses.Select(m => (IReadOnlyList<string>)[m.Label, Number(m.Kg, "0.0000"), $"within {Number(m.ToleranceKg, "0.0000")}", Number(m.StandardUncertaintyKg, "0.0000"), m.Lot]))
        .Text("h2", "Residuals").Raw(ResidualPlot.Draw(procedure.Points, procedure.Result))
        .Text("h2", "Points")
        .Table(["#", "part", "#repetition", "way", "load", "#mass, kg", "#read before, kg", "#residual, kg", "#counts", "time"],
            procedure.Points.Select(p => (IReadOnlyList<string>)
            [
                $"{p.Number}", Stage(p.Stage), p.Repetition > 0 ? $"{p.Repetition}" : "", p.WayDown ? "down" : "up", $"{Load(p.Load)} {p.Spot}{(p.Because.Length > 0 ? $" (said to be empty: {p.Because})" : "")}".Trim(),
                p.HasLoadKg ? Number(p.LoadKg) : "", p.HasReadKg ? Number(p.ReadKg) : "", p.HasResidualKg ? Signed(p.ResidualKg) : "", Number(p.Counts, "0.0"), p.Time.LocalSecond(),
            ]));
}
