using System.Globalization;
using System.Text;
using ScaleLink.Daemon.Reports;

namespace ScaleLink.Daemon.Workflows.SetupSheets;

/// <summary>A setup sheet as a table for a spreadsheet, in kg and mm.</summary>
internal static class SheetCsv
{
    public static string Of(SheetVersion sheet)
    {
        var text = new StringBuilder();
        Remark("setup sheet", sheet.Words);
        Remark("saved", string.Create(CultureInfo.InvariantCulture, $"{sheet.At.UtcDateTime:yyyy-MM-dd HH:mm:ss}Z by {sheet.Who}, entry {sheet.Entry}"));
        Remark("note", sheet.Note);
        text.Append("slot,what,value,unit\r\n");
        foreach (var (slot, value) in sheet.Content.Values)
            text.AppendJoin(',', Text(slot.ToString()), Text(slot.Words), value.Number is { } number ? number.ToString("R", CultureInfo.InvariantCulture) : Text(value.Text ?? ""), Text(slot.Field?.Unit?.Sign ?? "")).Append("\r\n");
        return text.ToString();

        // A line break in a name would end the remark.
        void Remark(string name, string said) => text.Append("# ").Append(name).Append(": ").Append(said.ReplaceLineEndings(" ")).Append("\r\n");
    }

    private static string Text(string text) => CsvText.Quoted(CsvText.Harmless(text));
}
