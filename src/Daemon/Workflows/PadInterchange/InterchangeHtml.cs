using ScaleLink.Daemon.Reports;
using ScaleLink.Daemon.Workflows.Calibration.Export;
using ScaleLink.Measure;
using static ScaleLink.Daemon.Workflows.Calibration.Export.ReportWords;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.PadInterchange;

/// <summary>A report of one pad interchange to print.</summary>
internal static class InterchangeHtml
{
    public static string Write(InterchangeSheet sheet)
    {
        var interchange = sheet.Interchange;
        var html = new Html().Raw("<!doctype html>\n<html lang=\"en\">\n<head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width\">\n")
            .Text("title", $"Pad interchange {interchange.InterchangeId}").Raw($"<style>{ProcedureHtml.Style}</style></head>\n<body>\n")
            .Text("h1", "Pads interchanged under one car")
            .Facts(
                ("number", interchange.InterchangeId), ("bay", sheet.Bay), ("outcome", sheet.State), ("begun", $"{interchange.BegunAt.LocalSecond()} by {interchange.BegunBy}"),
                ("ended", interchange.EndedAt is null ? "" : $"{interchange.EndedAt.LocalSecond()} by {interchange.EndedBy}"), ("remark", interchange.Remark),
                ("report made", LocalTime.Second(sheet.Made)))
            .Raw("<aside>").Text("span", ProcedureSheet.NoCertificate).Raw("</aside>\n");
        if (interchange.Refused is { } refused)
            html.Text("h2", "Why there is no outcome").Table(["code", "what", "remedy"], [[refused.Code, refused.Message, refused.Remedy]]);
        if (interchange.Result is { } result)
            Result(html, result);
        return html.Text("h2", "Weighings")
            .Table(["#placement", "time", "corner", "pad", "#load, kg"],
                sheet.Loads.Select(l => (IReadOnlyList<string>)[$"{l.Number}", l.Time, l.Corner, l.Pad.SerialNumber, Number(l.Pad.LoadKg)]))
            .Raw("</body></html>\n").ToString();
    }

    private static void Result(Html html, Wire.InterchangeResult result)
    {
        html.Text("h2", "The pads against the mean of the four")
            .Table(["pad", "#reads high by, %", "#expanded uncertainty, %", "verdict"],
                result.Pads.Select(p => (IReadOnlyList<string>)[p.SerialNumber, Signed(100 * p.Relative), $"±{Number(100 * p.Expanded)}", p.Departs ? "departs" : "no departure seen"]))
            .Text("h2", "The car with that taken out").Facts(
                ("loads", string.Join(", ", new[] { result.LoadsKg.Lf, result.LoadsKg.Rf, result.LoadsKg.Lr, result.LoadsKg.Rr }.Zip(Corners.All.ToArray(), (kg, corner) => $"{corner} {Number(kg, "0.00")} kg"))),
                ("cross weight, (RF + LR) / total", $"{Number(result.CrossWeightPercent, "0.00")} %"),
                ("warp from weighing to weighing", string.Join(", ", result.WarpKg.Select(w => $"{Signed(w)} kg"))),
                ("repeatability that remains", $"{Number(result.ResidualSdKg)} kg, {result.DegreesOfFreedom} degrees of freedom"))
            .Text("p", $"This cannot see: {string.Join("; ", result.CannotSee)}.");
    }
}
