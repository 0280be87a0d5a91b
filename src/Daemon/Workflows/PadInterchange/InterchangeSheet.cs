using System.Text;
using Google.Protobuf;
using ScaleLink.Daemon.Reports;
using ScaleLink.Daemon.Workflows.Calibration.Export;
using ScaleLink.Measure;
using Wire = ScaleLink.Api.V1;
using static ScaleLink.Daemon.Workflows.Calibration.Export.ReportWords;

namespace ScaleLink.Daemon.Workflows.PadInterchange;

/// <summary>Everything that a report of one pad interchange says.</summary>
/// <param name="Interchange">As recorded.</param>
/// <param name="Bay">Name of the bay.</param>
/// <param name="Made">When the report was made, UTC.</param>
internal sealed record InterchangeSheet(Wire.InterchangeView Interchange, string Bay, DateTimeOffset Made)
{
    private static readonly JsonFormatter Json = new(JsonFormatter.Settings.Default.WithIndentation().WithPreserveProtoFieldNames(true));

    /// <summary>How it stands, in words.</summary>
    public string State => Interchange.State switch
    {
        Wire.InterchangeState.Measuring => "not finished",
        Wire.InterchangeState.Review => "all weighed, not finished",
        Wire.InterchangeState.Finished => "finished",
        Wire.InterchangeState.Abandoned => "abandoned",
        _ => "",
    };

    /// <summary>Each weighing at each corner: number, time, corner, pad, load.</summary>
    public IEnumerable<(uint Number, string Time, string Corner, Wire.PlacedPad Pad)> Loads =>
        Interchange.Placements.SelectMany(p => p.Pads.Zip(Corners.All.ToArray(), (pad, corner) => (p.Number, Time(p.Time), $"{corner}", pad)));

    /// <summary>The report as a file.</summary>
    public Wire.ExportedFile As(Wire.ExportFormat format) => format switch
    {
        Wire.ExportFormat.Csv => File("csv", "text/csv; charset=utf-8", Csv()),
        Wire.ExportFormat.Json => File("json", "application/json; charset=utf-8", Json.Format(Interchange) + "\n"),
        _ => File("html", "text/html; charset=utf-8", InterchangeHtml.Write(this)),
    };

    private string Csv()
    {
        var text = new StringBuilder();
        Remark("pad interchange", $"{Interchange.InterchangeId}, bay {Bay}, {State}");
        Remark("begun", $"{Time(Interchange.BegunAt)} by {Interchange.BegunBy}");
        foreach (var pad in Interchange.Result?.Pads ?? [])
            Remark("pad", $"{pad.SerialNumber}: {Exact(pad.Relative)} relative to the mean of the four, expanded uncertainty {Exact(pad.Expanded)} (95 %)");
        Remark("note", ProcedureSheet.NoCertificate);
        text.Append("placement,time_utc,corner,pad,load_kg,calibration\r\n");
        foreach (var (number, at, corner, pad) in Loads)
            text.AppendJoin(',', number, at, corner, CsvText.Quoted(CsvText.Harmless(pad.SerialNumber)), Exact(pad.LoadKg), pad.Calibration).Append("\r\n");
        return text.ToString();

        // A line break in a name would end the remark.
        void Remark(string name, string value) => text.Append("# ").Append(name).Append(": ").Append(value.ReplaceLineEndings(" ")).Append("\r\n");
    }

    private Wire.ExportedFile File(string ending, string type, string content) => new()
    {
        FileName = $"pad-interchange-{Interchange.InterchangeId}.{ending}",
        ContentType = type,
        Content = ByteString.CopyFrom(content, Encoding.UTF8),
    };
}
