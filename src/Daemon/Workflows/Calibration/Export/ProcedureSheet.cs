using System.Text;
using Google.Protobuf;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.Calibration.Export;

/// <summary>Everything that a report of one calibration procedure says.</summary>
/// <param name="Procedure">As recorded.</param>
/// <param name="Bay">Name of the bay.</param>
/// <param name="Made">When the report was made, UTC.</param>
internal sealed record ProcedureSheet(Wire.ProcedureView Procedure, string Bay, DateTimeOffset Made)
{
    /// <summary>Stands on every report.</summary>
    public const string NoCertificate =
        "This is a workshop's own record. It is not a calibration certificate of an accredited laboratory and no verification: "
        + "the equipment is not approved for trade weighing. Local codes and licensed practice come first.";

    private static readonly JsonFormatter Json = new(JsonFormatter.Settings.Default.WithIndentation().WithPreserveProtoFieldNames(true));

    /// <summary>The report as a file.</summary>
    public Wire.ExportedFile As(Wire.ExportFormat format) => format switch
    {
        Wire.ExportFormat.Csv => File("csv", "text/csv; charset=utf-8", ProcedureCsv.Write(this)),
        Wire.ExportFormat.Json => File("json", "application/json; charset=utf-8", Json.Format(Procedure) + "\n"),
        _ => File("html", "text/html; charset=utf-8", ProcedureHtml.Write(this)),
    };

    private Wire.ExportedFile File(string ending, string type, string content) => new()
    {
        FileName = $"calibration-procedure-{Procedure.ProcedureId}-{Safe(Procedure.SerialNumber)}.{ending}",
        ContentType = type,
        Content = ByteString.CopyFrom(content, Encoding.UTF8),
    };

    // A pad chooses its serial number; a path must not come of it.
    private static string Safe(string text) => new([.. text.Take(40).Select(c => char.IsAsciiLetterOrDigit(c) || c == '-' ? c : '_')]);
}
