using System.Text;
using ScaleLink.Daemon.Reports;
using static ScaleLink.Daemon.Workflows.Calibration.Export.ReportWords;

namespace ScaleLink.Daemon.Workflows.Calibration.Export;

/// <summary>The points of a calibration procedure, a line each, for spreadsheets and scripts.</summary>
internal static class ProcedureCsv
{
    private const string Columns = "number,stage,repetition,way,load,spot,time_utc,load_kg,counts,read_kg,residual_kg,cell_counts";

    public static string Write(ProcedureSheet sheet)
    {
        var procedure = sheet.Procedure;
        var text = new StringBuilder();
        Remark(text, "calibration procedure", $"{procedure.ProcedureId}, pad {procedure.SerialNumber}, {procedure.Corner.ToString().ToUpperInvariant()}, bay {sheet.Bay}, {State(procedure.State)}");
        Remark(text, "begun", $"{Time(procedure.BegunAt)} by {procedure.BegunBy}");
        if (procedure.Result?.Calibration is { } calibration)
        {
            Remark(text, "calibration", calibration.Id);
            Remark(text, "span_kg_per_count", Exact(calibration.SpanKgPerCount));
            Remark(text, "curvature_kg_per_count2", Exact(calibration.CurvatureKgPerCount2));
            Remark(text, "expanded_uncertainty_kg", $"{Number(calibration.ExpandedUncertaintyKg)} at {Number(calibration.ExpandedAtKg, "0.0")} kg (95 %)");
        }

        foreach (var mass in procedure.Masses)
            Remark(text, "mass", $"{mass.Label}: {Exact(mass.Kg)} kg, u {Exact(mass.StandardUncertaintyKg)} kg, {mass.Lot}");
        Remark(text, "note", ProcedureSheet.NoCertificate);
        text.Append(Columns).Append("\r\n");
        foreach (var p in procedure.Points)
            text.AppendJoin(',', p.Number, Stage(p.Stage), p.Repetition, p.WayDown ? "down" : "up", Text(Load(p.Load)), Text(p.Spot), Time(p.Time),
                p.HasLoadKg ? Exact(p.LoadKg) : "", Exact(p.Counts), p.HasReadKg ? Exact(p.ReadKg) : "", p.HasResidualKg ? Exact(p.ResidualKg) : "",
                string.Join(' ', p.CellCounts.Select(Exact))).Append("\r\n");
        return text.ToString();
    }

    // A line break in a name would end the remark and begin a point.
    private static void Remark(StringBuilder text, string name, string value) => text.Append("# ").Append(name).Append(": ").Append(value.ReplaceLineEndings(" ")).Append("\r\n");

    private static string Text(string text) => CsvText.Quoted(CsvText.Harmless(text));
}
