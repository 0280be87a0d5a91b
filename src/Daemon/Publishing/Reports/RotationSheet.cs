using System.Text;
using Google.Protobuf;
using ScaleLink.Daemon.Reports;
using ScaleLink.Measure;
using Wire = ScaleLink.Api.V1;
using static ScaleLink.Daemon.Publishing.Reports.ReportWords;

namespace ScaleLink.Daemon.Publishing.Reports;

/// <summary>Everything that a report of one rotation says.</summary>
/// <param name="Rotation">As recorded.</param>
/// <param name="Bay">Name of the bay.</param>
/// <param name="Made">When the report was made, UTC.</param>
internal sealed record RotationSheet(Wire.RotationView Rotation, string Bay, DateTimeOffset Made)
{
    private static readonly JsonFormatter Json = new(JsonFormatter.Settings.Default.WithIndentation().WithPreserveProtoFieldNames(true));

    /// <summary>How it stands, in words.</summary>
    public string State => Rotation.State switch
    {
        Wire.RotationState.Measuring => "not finished",
        Wire.RotationState.Review => "all weighed, not finished",
        Wire.RotationState.Finished => "finished",
        Wire.RotationState.Abandoned => "abandoned",
        _ => "",
    };

    /// <summary>Each weighing at each corner: number, time, corner, pad, load.</summary>
    public IEnumerable<(uint Number, string Time, string Corner, Wire.PlacedPad Pad)> Loads =>
        Rotation.Placements.SelectMany(p => p.Pads.Zip(Corners.All.ToArray(), (pad, corner) => (p.Number, Time(p.Time), $"{corner}", pad)));

    /// <summary>The report as a file.</summary>
    public Wire.ExportedFile As(Wire.ExportFormat format) => format switch
    {
        Wire.ExportFormat.Csv => File("csv", "text/csv; charset=utf-8", Csv()),
        Wire.ExportFormat.Json => File("json", "application/json; charset=utf-8", Json.Format(Rotation) + "\n"),
        _ => File("html", "text/html; charset=utf-8", RotationHtml.Write(this)),
    };

    private string Csv()
    {
        var text = new StringBuilder();
        Remark("rotation", $"{Rotation.RotationId}, bay {Bay}, {State}");
        Remark("begun", $"{Time(Rotation.BegunAt)} by {Rotation.BegunBy}");
        foreach (var pad in Rotation.Result?.Pads ?? [])
            Remark("pad", $"{pad.SerialNumber}: {Exact(pad.Relative)} relative to the mean of the four, expanded uncertainty {Exact(pad.Expanded)} (95 %)");
        Remark("note", ProofSheet.NoCertificate);
        text.Append("placement,time_utc,corner,pad,load_kg,calibration\r\n");
        foreach (var (number, at, corner, pad) in Loads)
            text.AppendJoin(',', number, at, corner, CsvText.Quoted(CsvText.Harmless(pad.SerialNumber)), Exact(pad.LoadKg), pad.Calibration).Append("\r\n");
        return text.ToString();

        // A line break in a name would end the remark.
        void Remark(string name, string value) => text.Append("# ").Append(name).Append(": ").Append(value.ReplaceLineEndings(" ")).Append("\r\n");
    }

    private Wire.ExportedFile File(string ending, string type, string content) => new()
    {
        FileName = $"rotation-{Rotation.RotationId}.{ending}",
        ContentType = type,
        Content = ByteString.CopyFrom(content, Encoding.UTF8),
    };
}
