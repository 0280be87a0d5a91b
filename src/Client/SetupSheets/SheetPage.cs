using ScaleLink.Api.V1;
using ScaleLink.Client.Runtime;
using static ScaleLink.Measure.Sentences.Arguments;

namespace ScaleLink.Client.SetupSheets;

/// <summary>Setup sheets as lines.</summary>
internal static class SheetPage
{
    private static readonly string[] CornerNames = ["LF", "RF", "LR", "RR"], AxleNames = ["front", "rear"];

    public static IEnumerable<string> List(IReadOnlyCollection<SetupSheet> sheets)
    {
        if (sheets.Count == 0)
            yield return "No setup sheet is on record. Save the first: scalelink sheet set --track TRACK --driver NAME --from CARFILE.";
        foreach (var sheet in sheets)
            yield return $"{(sheet.OnCar ? "*" : " ")} {Names(sheet.Key, 20)}  version {sheet.Version}, {By(sheet)}{Note(sheet)}";
        if (sheets.Any(s => s.OnCar))
            yield return "* on the car";
    }

    public static IEnumerable<string> Versions(ListSheetVersionsResponse list)
    {
        foreach (var version in list.Versions)
            yield return $"{(version.OnCar ? "*" : " ")} {version.Version,4}  {By(version)}{(version.CopiedFrom.Length > 0 ? $", copied from {PeerText.Clean(version.CopiedFrom, 80)}" : "")}{Note(version)}";
        if (list.Versions.Count < list.Total)
            yield return $"{list.Versions.Count} of {list.Total}; --most shows more.";
    }

    public static IEnumerable<string> Saved(SetupSheet sheet) => [$"{Names(sheet.Key, 40)}: version {sheet.Version}{(sheet.OnCar ? ", on the car" : ", not on the car")}, entry {sheet.Entry}."];

    public static IEnumerable<string> Now(SheetNow now, Glyphs glyphs)
    {
        if (now.Sheet is not { } sheet)
            return [$"Nobody has said how {PeerText.Clean(now.Car, 40)} is set up. Save a sheet: scalelink sheet set, or fit one: scalelink sheet fit."];
        List<string> lines = [.. Whole(sheet, glyphs, now.HasTurns ? "~" : " ")];
        lines.Add(now.HasTurns ? $"Turned since: {Four(now.TurnsSince)}. What is marked ~ was before these turns." : "No turns are on record since.");
        if (now is { HasTurns: true, PerchTurns: { } stand })
            lines.Add($"Perches stand by now at: {Four(stand)} turns up from their marks.");
        if (now.RideHeightsMm is { } h)
            lines.Add($"Ride heights by now, as predicted from the last ones measured: {glyphs.Line($"LF {Mm(h.Lf):0.0}, RF {Mm(h.Rf):0.0}, LR {Mm(h.Lr):0.0}, RR {Mm(h.Rr):0.0}")}.");
        lines.AddRange(now.Remarks.Select(r => PeerText.Clean(r.Said.In(glyphs.Units.Mass, glyphs.Units.Length), 300)));
        return lines;
    }

    /// <param name="sheet">The sheet.</param>
    /// <param name="glyphs">Of this terminal.</param>
    /// <param name="moved">Marks what turns of the perches move.</param>
    public static IEnumerable<string> Whole(SetupSheet sheet, Glyphs glyphs, string moved = " ")
    {
        yield return $"{Names(sheet.Key, 40)}, version {sheet.Version}{(sheet.OnCar ? ", on the car" : "")}";
        yield return $"saved {By(sheet)}, entry {sheet.Entry}{(sheet.CopiedFrom.Length > 0 ? $", copied from {PeerText.Clean(sheet.CopiedFrom, 80)}" : "")}{Note(sheet)}";
        foreach (var group in sheet.Values.GroupBy(v => v.Group))
        {
            yield return "";
            yield return PeerText.Clean(group.Key, 20);
            foreach (var field in group.GroupBy(v => Key(v.Slot)))
                foreach (var line in Field([.. field], glyphs, moved))
                    yield return line;
        }
    }

    public static IEnumerable<string> Fields(IEnumerable<SheetField> fields, string part, Glyphs glyphs)
    {
        foreach (var field in fields.Where(f => part.Length == 0 || string.Equals(f.Group, part, StringComparison.OrdinalIgnoreCase)))
        {
            var unit = glyphs.Units.For(field.Unit);
            var where = field.Scope switch { SheetScope.Corner => ".LF", SheetScope.Axle => ".front", SheetScope.Named => ".PLACE", _ => "" };
            yield return $"{PeerText.Clean(field.Key, 40) + where,-34} {PeerText.Clean(field.Words, 60)}{(field.IsText ? ", a text" : $", {unit.ShowShortest(field.Low)} to {unit.ShowShortest(field.High)} {unit.Sign}".TrimEnd())}";
        }
    }

    public static IEnumerable<string> Difference(SheetComparison c, Glyphs glyphs)
    {
        yield return $"{Names(c.First.Key, 40)}, version {c.First.Version} -> {Names(c.Second.Key, 40)}, version {c.Second.Version}";
        if (c.Differences.Count == 0)
            yield return "No difference.";
        foreach (var d in c.Differences)
            yield return $"{PeerText.Clean(d.Words, 60),-40} {Value(d.First, glyphs)} -> {Value(d.Second, glyphs)}";
    }

    private static IEnumerable<string> Field(IReadOnlyList<SheetValue> values, Glyphs glyphs, string moved)
    {
        var mark = values[0].MovesWithPerches ? moved : " ";
        var places = values.Select(v => Place(v.Slot)).ToList();
        // What four corners share is said once.
        if (values.Count > 1 && places.TrueForAll(p => CornerNames.Contains(p) || AxleNames.Contains(p)))
        {
            var words = Words(values[0], places[0]);
            var shown = values.Select(v => Value(v, glyphs)).ToList();
            return [shown.Distinct().Count() == 1 && values.Count == (CornerNames.Contains(places[0]) ? 4 : 2)
                ? $"{mark} {words,-36} {shown[0]}"
                : $"{mark} {words,-36} {string.Join("  ", places.Zip(shown, (p, s) => $"{p} {s}"))}"];
        }

        return values.Select(v => $"{mark} {PeerText.Clean(v.Words, 90),-36} {Value(v, glyphs)}");
    }

    private static string Words(SheetValue value, string place) => PeerText.Clean(value.Words.EndsWith($" {place}", StringComparison.Ordinal) ? value.Words[..^(place.Length + 1)] : value.Words, 60);

    private static string Value(SheetValue? value, Glyphs glyphs) => value is null ? "-" : PeerText.Clean(value.Show(glyphs.Units), 200);

    private static string Key(string slot) => string.Join('.', slot.Split('.', 3).Take(2));

    private static string Place(string slot) => slot.Split('.', 3) is [_, _, var place] ? place : "";

    private static string Four(CornerNumbers n) => FormattableString.Invariant($"LF {n.Lf:+0.###;-0.###;0}, RF {n.Rf:+0.###;-0.###;0}, LR {n.Lr:+0.###;-0.###;0}, RR {n.Rr:+0.###;-0.###;0}");

    private static string Names(SheetKey key, int most) => string.Join(", ", new[] { key.Car, key.Track, key.Driver }.Where(n => n.Length > 0).Select(n => PeerText.Clean(n, most)));

    private static string By(SetupSheet sheet) => $"{sheet.SavedAt.LocalMinute()} by {PeerText.Clean(sheet.Who, 24)}";

    private static string Note(SetupSheet sheet) => sheet.Note.Length > 0 ? $": {PeerText.Clean(sheet.Note, 120)}" : "";
}
