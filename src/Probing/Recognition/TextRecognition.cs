using System.Buffers;
using System.Text;
using System.Text.RegularExpressions;
using ScaleLink.Protocol.Readings;
using ScaleLink.Protocol.TextLines;

namespace ScaleLink.Probing.Recognition;

/// <summary>Whether lines with numbers are spoken, and a pattern that fits them. A pattern is proposed only after it has read the lines that were heard.</summary>
internal static partial class TextRecognition
{
    private const int FewestLines = 3;
    private const double LeastPrintable = 0.97;
    private const double LeastFitting = 0.9;

    private static readonly string[] LoadWords = ["load", "weight", "net", "gross", "wt", "mass"];
    private static readonly (string Unit, string Toml, FieldUnit Meaning)[] Units = [("kg", "kg", FieldUnit.Kilogram), ("lb", "lb", FieldUnit.Pound), ("g", "g", FieldUnit.Gram)];
    private static readonly (string Word, string Group)[] OtherWords = [("pitch", "pitch"), ("roll", "roll"), ("temp", "temperature")];

    public static bool IsText(byte[] heard) =>
        heard.Length > 0 && heard.Count(b => b is >= 0x20 and < 0x7F or (byte)'\r' or (byte)'\n' or (byte)'\t') >= LeastPrintable * heard.Length;

    public static Found? Of(byte[] heard)
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
            : new FoundNothing($"{lines.Count} lines of text that have no shape in common");
    }

    private static Found Propose(byte[] heard, List<string> lines, LineShape shape, bool isChecked)
    {
        var load = LoadOf(shape);
        var unit = UnitOf(shape, load);
        var pattern = shape.ToPattern(number => number == load ? "load" : OtherOf(shape, number));
        var separator = isChecked ? Regex.Escape(lines[0][^3].ToString()) : "";
        var checkedPattern = $"{pattern}{separator}(?<check>[0-9A-Fa-f]{{2}})";
        var isXor = isChecked && Fitting(heard, checkedPattern, unit.Meaning, LineChecksum.Xor) >= LeastFitting * lines.Count;
        var proposed = isXor ? checkedPattern : isChecked ? $"{pattern}{separator}[0-9A-Fa-f]{{2}}" : pattern;
        var fitting = Fitting(heard, proposed, unit.Meaning, isXor ? LineChecksum.Xor : LineChecksum.None);
        if (fitting < LeastFitting * lines.Count)
            return new FoundNothing($"{lines.Count} lines of text, of which no pattern fits enough");
        return new FoundText
        {
            Lines = lines.Count,
            Fitting = fitting,
            Numbers = [.. Enumerable.Range(0, shape.Numbers).Select(k => new FoundNumber(k + 1, shape.Before(k), shape.After(k), UnitOf(shape, k).Toml, shape.Largest[k]))],
            Load = load + 1,
            Pattern = proposed,
            HasXor = isXor,
        };
    }

    private static (string Unit, string Toml, FieldUnit Meaning) UnitOf(LineShape shape, int number) => Units.FirstOrDefault(u => Regex.IsMatch(shape.After(number), $@"^\W*{u.Unit}\b"));

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
