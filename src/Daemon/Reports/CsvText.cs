namespace ScaleLink.Daemon.Reports;

/// <summary>Texts of people as fields of a table (RFC 4180).</summary>
internal static class CsvText
{
    /// <summary>Spreadsheets run what begins like a formula; an apostrophe makes it a text.</summary>
    public static string Harmless(string text) => text is ['=' or '+' or '-' or '@' or '\t' or '\r', ..] ? $"'{text}" : text;

    /// <summary>Between quotes.</summary>
    public static string Quoted(string text) => $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
