using ScaleLink.Daemon.Reports;
using ScaleLink.Measure;
using ScaleLink.Weighing.SetupSheets;

namespace ScaleLink.Daemon.Workflows.SetupSheets;

/// <summary>A setup sheet for printing: one HTML page that needs nothing else. Whatever people typed is escaped.</summary>
internal static class SheetHtml
{
    private const string Style =
        "body{font:10.5pt/1.35 sans-serif;max-width:180mm;margin:8mm auto;color:#111;background:#fff}h1{font-size:16pt;margin:0 0 2mm}h2{font-size:11.5pt;margin:5mm 0 1mm}"
        + "table{border-collapse:collapse;width:100%;table-layout:fixed;font-variant-numeric:tabular-nums;break-inside:avoid}th,td{border-bottom:1px solid #bbb;padding:.8mm 1.5mm;text-align:left;overflow-wrap:anywhere}"
        + "th{font-weight:normal;color:#444}.n{text-align:right}p.small{font-size:9pt;color:#444}@media print{body{margin:0}}@page{size:A4;margin:12mm}";

    /// <summary>The page, in the units asked for.</summary>
    public static string Of(SheetVersion sheet, Units units)
    {
        var page = new Html().Raw("<!DOCTYPE html><html lang=\"en\"><head><meta charset=\"utf-8\">").Text("title", $"Setup, {sheet.Words}").Raw($"<style>{Style}</style></head><body>")
            .Text("h1", sheet.Key.Car)
            .Text("p", string.Join(", ", new[] { sheet.Key.Track, sheet.Key.Driver, $"version {sheet.Version}" }.Where(w => w.Length > 0)));
        if (sheet.Note.Length > 0)
            page.Text("p", sheet.Note);
        foreach (var group in sheet.Content.Values.GroupBy(v => v.Key.Field?.Group ?? "of a later version"))
        {
            page.Text("h2", string.Concat(char.ToUpperInvariant(group.Key[0]), group.Key[1..]));
            Tables(page, [.. group], units);
        }

        return page
            .Raw("<p class=\"small\">").Raw(Html.Escape($"Saved {LocalTime.Minute(sheet.At)} by {sheet.Who}, entry {sheet.Entry} of the ledger.")).Raw("</p>")
            .Raw(sheet.CopiedFrom.Length > 0 ? $"<p class=\"small\">{Html.Escape($"Copied from {sheet.CopiedFrom}.")}</p>" : "")
            .Raw("<p class=\"small\">Turns up from a mark are positive where they raise the corner. Toe in, and wheels leaning out, are positive.</p></body></html>").ToString();
    }

    private static void Tables(Html page, IReadOnlyList<KeyValuePair<SheetSlot, SheetValue>> values, Units units)
    {
        string[] corners = ["LF", "RF", "LR", "RR"], axles = ["front", "rear"];
        Across(page, "#", corners, [.. values.Where(v => v.Key.Field?.Scope == SheetScope.EachCorner)], units);
        Across(page, "", axles, [.. values.Where(v => v.Key.Field?.Scope == SheetScope.EachAxle)], units);
        var rest = values.Where(v => v.Key.Field?.Scope is not (SheetScope.EachCorner or SheetScope.EachAxle)).ToList();
        if (rest.Count > 0)
            page.Table(["", ""], rest.Select(v => (IReadOnlyList<string>)[v.Key.Words, v.Value.Show(v.Key.Field, units)]));
    }

    private static void Across(Html page, string kind, string[] places, IReadOnlyList<KeyValuePair<SheetSlot, SheetValue>> values, Units units)
    {
        if (values.Count > 0)
            page.Table(["", .. places.Select(p => kind + p)], values.GroupBy(v => v.Key.Key).Select(row => (IReadOnlyList<string>)
                [row.First().Key.Field!.Words, .. places.Select(p => row.FirstOrDefault(v => v.Key.Place == p) is { Key.Key: not null } there ? there.Value.Show(there.Key.Field, units) : "")]));
    }
}
