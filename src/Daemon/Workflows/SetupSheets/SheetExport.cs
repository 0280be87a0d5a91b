using System.Text;
using Google.Protobuf;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.SetupSheets;

/// <summary>A setup sheet as a file, under a name that any disk takes.</summary>
internal static class SheetExport
{
    private const int LongestName = 80;

    public static Wire.ExportedFile File(SheetVersion sheet, string ending, string type, string content) => new()
    {
        FileName = $"setup-{Safe(sheet.Key.Words)}-{sheet.Version}.{ending}",
        ContentType = type,
        Content = ByteString.CopyFrom(content, Encoding.UTF8),
    };

    private static string Safe(string name)
    {
        var safe = new StringBuilder();
        foreach (var sign in name.Take(LongestName))
            if (char.IsAsciiLetterOrDigit(sign))
                safe.Append(char.ToLowerInvariant(sign));
            else if (safe.Length > 0 && safe[^1] != '-')
                safe.Append('-');
        return safe.ToString().Trim('-');
    }
}
