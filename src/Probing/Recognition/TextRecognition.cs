using System.Text.RegularExpressions;
using ScaleLink.Protocol.TextLines;

namespace ScaleLink.Probing.Recognition;

/// <summary>Whether lines with numbers are spoken, and a pattern that fits them. A pattern is proposed only after it has read the lines that were heard.</summary>
internal static partial class TextRecognition
{
    private const int FewestLines = 3;
    private const double LeastPrintable = 0.97;
    private const byte StartOfText = 2, EndOfText = 3;

    private static readonly (string Pattern, string Toml)[] Units = [(@"^\W*(?i:kg)\b", "kg"), (@"^\W*(?i:lbs?)\b", "lb"), (@"^\W*g\b", "g")];

    private static readonly (string Word, string Group)[] OtherWords = [("pitch", "pitch"), ("roll", "roll"), ("temp", "temperature")];

    public static bool IsText(byte[] heard) =>
        heard.Length > 0 && heard.Count(b => b is >= 0x20 and < 0x7F or (byte)'\r' or (byte)'\n' or (byte)'\t' or StartOfText or EndOfText) >= LeastPrintable * heard.Length;

    public static Found? Of(byte[] heard)
    {
        if (!IsText(heard))
            return heard.Count(b => b == StartOfText) >= FewestLines && heard.Count(b => b == EndOfText) >= FewestLines && heard.Count(b => b is >= (byte)'0' and <= (byte)'9') > heard.Length / 4
                ? new FoundNothing("Text between STX and ETX, with something behind it that is no text", "A check character behind ETX is not understood here: switch it off in the device.")
                : null;
        var said = HeardLines.Of(heard);
        if (said.Lines.Count < FewestLines)
            return null;
        var isChecked = said.Lines.All(l => Check().IsMatch(l)) && (said.Lines.All(IsXor) || said.Lines.Any(l => l[^2..].Any(char.IsAsciiLetter)));
        if (LineShape.Of(isChecked ? [.. said.Lines.Select(l => Check().Replace(l, ""))] : said.Lines) is not { } shape)
            return new FoundNothing($"{said.Lines.Count} lines of text that have no shape in common");
        return Propose(said, shape, isChecked) is { } proposed ? proposed : new FoundNothing($"{said.Lines.Count} lines of text, of which no pattern fits enough");
    }

    // Two digits behind a mark may as well be a number of their own: only a right sum, or a letter among them, tells.
    private static bool IsXor(string line) => LineXor.IsGood(line, line.Length - 2, line.AsSpan(line.Length - 2));

    private static FoundText? Propose(HeardLines said, LineShape shape, bool isChecked)
    {
        var numbers = Enumerable.Range(0, shape.Numbers).Select(k => Number(shape, k)).ToList();
        var reading = new TextReading(said, shape, isChecked, numbers);
        var (load, why) = LoadChoice.Of(numbers);
        var others = numbers.Where(n => n.MayBeLoad && n != load).Select(n => reading.Take([n.Position])).OfType<FoundText>().ToDictionary(t => t.Load);
        var taken = reading.Take([load.Position]);
        return taken is null ? null : taken with { Why = why, Others = others };
    }

    private static FoundNumber Number(LineShape shape, int number) => new(number + 1, shape.Before(number), shape.After(number), shape.Values(number).Min(), shape.Values(number).Max())
    {
        Unit = Units.FirstOrDefault(u => Regex.IsMatch(shape.After(number), u.Pattern)).Toml,
        Meaning = MeaningOf(shape, number),
        Counts = shape.Counts(number),
    };

    // Each name only once.
    private static string? MeaningOf(LineShape shape, int number)
    {
        var names = Enumerable.Range(0, shape.Numbers).Select(k => OtherWords.FirstOrDefault(o => LastWord(shape.Before(k)).StartsWith(o.Word, StringComparison.OrdinalIgnoreCase)).Group).ToList();
        return names[number] is { } name && names.IndexOf(name) == number ? name : null;
    }

    private static string LastWord(string text) => text.Split([' ', ',', ':', ';', '='], StringSplitOptions.RemoveEmptyEntries).LastOrDefault() ?? "";

    [GeneratedRegex("[^0-9A-Za-z. ][0-9A-Fa-f]{2}$")]
    private static partial Regex Check();
}
