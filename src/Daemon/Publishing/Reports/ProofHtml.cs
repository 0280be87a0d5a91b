using ScaleLink.Daemon.Reports;
using Wire = ScaleLink.Api.V1;
using static ScaleLink.Daemon.Publishing.Reports.ReportWords;

namespace ScaleLink.Daemon.Publishing.Reports;

/// <summary>A report of one proof to print: two pages of A4 at most for an ordinary proof.</summary>
internal static class ProofHtml
{
    /// <summary>Shared by the reports of pads.</summary>
    public const string Style = """
        body{font:14px/1.4 system-ui,sans-serif;color:#111;background:#fff;max-width:52em;margin:2em auto;padding:0 1em}
        h1{font-size:1.5em;margin:0}h2{font-size:1.1em;margin:1.4em 0 .4em;border-bottom:1px solid #999}
        table{border-collapse:collapse;width:100%}th,td{padding:.15em .5em;text-align:left;border-bottom:1px solid #ddd}.n{text-align:right;font-variant-numeric:tabular-nums}
        dl{display:grid;grid-template-columns:max-content 1fr;gap:.1em 1.2em;margin:.6em 0}dt{color:#555}dd{margin:0;overflow-wrap:anywhere}
        svg{width:100%;font:11px system-ui,sans-serif}.axis{stroke:#111}.grid{stroke:#ddd}.up{fill:#111}.down{fill:#fff;stroke:#111}
        aside{border:2px solid #111;padding:.6em 1em;margin:1em 0}thead{display:table-header-group}tr,svg,aside{break-inside:avoid}
        @media print{body{margin:0;max-width:none;font-size:10pt}@page{size:A4;margin:15mm}}
        """;

    public static string Write(ProofSheet sheet)
    {
        var proof = sheet.Proof;
        var html = new Html().Raw($"<!doctype html>\n<html lang=\"en\">\n<head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width\">\n")
            .Text("title", $"Proof {proof.ProofId} of pad {proof.SerialNumber}").Raw($"<style>{Style}</style></head>\n<body>\n")
            .Text("h1", $"Proof of pad {proof.SerialNumber}")
            .Facts(
                ("number", $"{proof.ProofId}"), ("bay and place", $"{sheet.Bay}, {proof.Corner.ToString().ToUpperInvariant()}"), ("outcome", State(proof.State)),
                ("begun", $"{Time(proof.BegunAt)} by {proof.BegunBy}"), ("ended", Ended(proof)), ("remark", proof.Ending?.Reason ?? ""),
                ("report made", sheet.Made.ToString("yyyy-MM-ddTHH:mm:ssZ")))
            .Raw("<aside>").Text("span", ProofSheet.NoCertificate).Raw("</aside>\n");
        if (proof.Result is { } result)
            ResultHtml.Write(html, result);
        return Points(html, proof).Raw("</body></html>\n").ToString();
    }

    private static string Ended(Wire.ProofView proof) => proof.Ending is { } ending ? $"{Time(ending.Time)} by {ending.Who}" : "";

    private static Html Points(Html html, Wire.ProofView proof) => html
        .Text("h2", "Masses")
        .Table(["mass", "#kg", "#limits, kg", "#standard uncertainty, kg", "lot"],
            proof.Masses.Select(m => (IReadOnlyList<string>)[m.Label, Number(m.Kg, "0.0000"), $"±{Number(m.ToleranceKg, "0.0000")}", Number(m.StandardUncertaintyKg, "0.0000"), m.Lot]))
        .Text("h2", "Residuals").Raw(ResidualPlot.Draw(proof.Points))
        .Text("h2", "Points")
        .Table(["#", "part", "#run", "way", "load", "#mass, kg", "#read before, kg", "#residual, kg", "#counts", "time"],
            proof.Points.Select(p => (IReadOnlyList<string>)
            [
                $"{p.Number}", Stage(p.Stage), p.Run > 0 ? $"{p.Run}" : "", p.WayDown ? "down" : "up", $"{Load(p.Load)} {p.Spot}".Trim(),
                p.HasLoadKg ? Number(p.LoadKg) : "", p.HasReadKg ? Number(p.ReadKg) : "", p.HasResidualKg ? Signed(p.ResidualKg) : "", Number(p.Counts, "0.0"), Time(p.Time),
            ]));
}
