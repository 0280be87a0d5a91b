using System.Buffers;
using System.Text;
using System.Text.RegularExpressions;
using ScaleLink.Protocol.Readings;
using ScaleLink.Protocol.TextLines;

namespace ScaleLink.Client.Probe;

/// <summary>Whether lines with numbers are spoken, and a pattern that fits them. A pattern is proposed only after it has read the lines that were heard.</summary>
internal static partial class TextGuess
{
    private const int FewestLines = 3;
    private const double LeastPrintable = 0.97;
    private const double LeastFitting = 0.9;

    private static readonly string[] LoadWords = ["load", "weight", "net", "gross", "wt", "mass"];
    private static readonly (string Unit, string Toml, FieldUnit Meaning)[] Units = [("kg", "kg", FieldUnit.Kilogram), ("lb", "lb", FieldUnit.Pound), ("g", "g", FieldUnit.Gram)];
    private static readonly (string Word, string Group)[] OtherWords = [("pitch", "pitch"), ("roll", "roll"), ("temp", "temperature")];

    public static bool IsText(byte[] heard) =>
        heard.Length > 0 && heard.Count(b => b is >= 0x20 and < 0x7F or (byte)'\r' or (byte)'\n' or (byte)'\t') >= LeastPrintable * heard.Length;

    public static Guess? Of(byte[] heard)
    {
        if (!IsText(heard))
            return null;
        // The first and the last may be torn.
        var lines = Encoding.ASCII.GetString(heard).Split(['\r', '\n'])[1..^1].Select(l => l.Trim()).Where(l => l.Length is > 0 and <= TextLineDecoder.LongestLine).ToList();
        if (lines.Count < FewestLines)
            return null;
        var isChecked = lines.All(l => Check().IsMatch(l));
        return LineShape.Of(isChecked ? [.. lines.Select(l => Check().Replace(l, ""))] : lines) is { } shape
            ? Propose(heard, lines, shape, isChecked)
            : Guess.None($"{lines.Count} lines of text that have no shape in common");
    }

    private static Guess Propose(byte[] heard, List<string> lines, LineShape shape, bool isChecked)
    {
        var load = LoadOf(shape);
        var unit = Units.FirstOrDefault(u => Regex.IsMatch(shape.After(load), $@"^\W*{u.Unit}\b"));
        var pattern = shape.ToPattern(number => number == load ? "load" : OtherOf(shape, number));
        var separator = isChecked ? Regex.Escape(lines[0][^3].ToString()) : "";
        var checkedPattern = $"{pattern}{separator}(?<check>[0-9A-Fa-f]{{2}})";
        var isXor = isChecked && Fitting(heard, checkedPattern, unit.Meaning, LineChecksum.Xor) >= LeastFitting * lines.Count;
        var proposed = isXor ? checkedPattern : isChecked ? $"{pattern}{separator}[0-9A-Fa-f]{{2}}" : pattern;
        var fitting = Fitting(heard, proposed, unit.Meaning, isXor ? LineChecksum.Xor : LineChecksum.None);
        if (fitting < LeastFitting * lines.Count)
            return Guess.None($"{lines.Count} lines of text, of which no pattern fits enough");
        List<string> keys = ["protocol = \"text-lines\"", $"pattern = {TomlText.Literal(proposed)}", "capacity_kg = 600  # what the pad may carry: correct it"];
        if (unit.Toml is not null)
            keys.Add($"unit = \"{unit.Toml}\"");
        if (isXor)
            keys.Add("checksum = \"xor\"");
        return new Guess("text-lines", $"{lines.Count} lines of text; the pattern fits {fitting} of them{(isXor ? ", and their checksum is right" : "")}", keys, Remarks(unit.Toml, isXor));
    }

    private static List<string> Remarks(string? unit, bool isXor)
    {
        var remarks = new List<string>();
        if (unit is null)
            remarks.Add("No unit of mass is beside the number: its loads count as counts, and need kg_per_count or a calibration procedure with masses.");
        if (!isXor)
            remarks.Add("The lines carry no checksum that is known here: a wrong digit does not show. Switch one on in the device if it has one.");
        return remarks;
    }

    private static int LoadOf(LineShape shape)
    {
        var all = Enumerable.Range(0, shape.Numbers).ToList();
        var byUnit = all.FindIndex(k => Units.Any(u => Regex.IsMatch(shape.After(k), $@"^\W*{u.Unit}\b")));
        var byWord = all.FindIndex(k => LoadWords.Any(w => LastWord(shape.Before(k)).Contains(w, StringComparison.Ordinal)));
        return byUnit >= 0 ? byUnit : byWord >= 0 ? byWord : all.MaxBy(k => shape.Largest[k]);
    }

    // An angle counts only with the other one, and each name only once.
    private static string? OtherOf(LineShape shape, int number)
    {
        var names = Enumerable.Range(0, shape.Numbers).Select(k => OtherWords.FirstOrDefault(o => LastWord(shape.Before(k)).StartsWith(o.Word, StringComparison.Ordinal)).Group).ToList();
        var name = names[number];
        var isWhole = name is not ("pitch" or "roll") || names.Contains("pitch") && names.Contains("roll");
        return isWhole && names.IndexOf(name) == number ? name : null;
    }

    private static string LastWord(string text) => text.Split([' ', ',', ':', ';', '='], StringSplitOptions.RemoveEmptyEntries).LastOrDefault() ?? "";

    // The decoder of the daemon judges, not a likeness of it.
    private static int Fitting(byte[] heard, string pattern, FieldUnit unit, LineChecksum checksum)
    {
        if (!LinePattern.TryCreate(pattern, unit, 1, checksum, out var made, out _))
            return 0;
        var decoder = new TextLineDecoder(made, LineEnd.ReturnOrFeed);
        var rest = new ReadOnlySequence<byte>(heard);
        while (decoder.TryRead(rest, out var consumed, out _, out _))
            rest = rest.Slice(consumed);
        return (int)decoder.Counters.Lines;
    }

    [GeneratedRegex("[^0-9A-Za-z. ][0-9A-Fa-f]{2}$")]
    private static partial Regex Check();
}
