using System.Text;
using System.Text.RegularExpressions;

namespace ScaleLink.Probing.Recognition;

/// <summary>
/// The common shape of lines: numbers, and the text between them. Where the text differs from line to line, as a word for "stable" does, the
/// shape takes each that was heard.
/// </summary>
internal sealed partial class LineShape
{
    private const int MostWordings = 6;

    private readonly List<HashSet<string>> _between;

    private LineShape(List<HashSet<string>> between, IReadOnlyList<double> largest) => (_between, Largest) = (between, largest);

    /// <summary>How many numbers a line has.</summary>
    public int Numbers => _between.Count - 1;

    /// <summary>The largest value heard of each number, without its sign.</summary>
    public IReadOnlyList<double> Largest { get; }

    /// <summary>The shape that most of the lines have; nothing when they have no number in common.</summary>
    public static LineShape? Of(IReadOnlyList<string> lines)
    {
        var cut = lines.Select(Cut).Where(c => c.Numbers.Count > 0).ToList();
        var common = cut.GroupBy(c => c.Numbers.Count).MaxBy(g => g.Count());
        if (common is null)
            return null;
        var between = Enumerable.Range(0, common.Key + 1).Select(k => common.Select(c => c.Texts[k]).ToHashSet(StringComparer.Ordinal)).ToList();
        return between.Exists(b => b.Count > MostWordings) ? null : new LineShape(between, [.. Enumerable.Range(0, common.Key).Select(k => common.Max(c => Math.Abs(c.Numbers[k])))]);
    }

    /// <summary>The text before a number, in lower case; several wordings joined.</summary>
    public string Before(int number) => string.Join(' ', _between[number]).ToLowerInvariant();

    /// <summary>The text behind a number, in lower case.</summary>
    public string After(int number) => string.Join(' ', _between[number + 1]).ToLowerInvariant();

    /// <summary>A regular expression for it; <paramref name="group"/> names the numbers that are wanted, others stay without a name.</summary>
    public string ToPattern(Func<int, string?> group)
    {
        var pattern = new StringBuilder();
        for (var number = 0; number < Numbers; number++)
        {
            pattern.Append(Alternatives(_between[number]));
            const string Number = @"[-+]? *\d+(?:[.,]\d+)?";
            pattern.Append(group(number) is { } name ? $"(?<{name}>{Number})" : Number);
        }

        return pattern.Append(Alternatives(_between[^1])).ToString();
    }

    private static string Alternatives(HashSet<string> texts)
    {
        var all = texts.Select(Text).Distinct().Order(StringComparer.Ordinal).ToList();
        return all.Count == 1 ? all[0] : $"(?:{string.Join('|', all)})";
    }

    // Columns are filled up with blanks, as many as the number leaves.
    private static string Text(string text) => Blanks().Replace(Regex.Escape(text).Replace(@"\ ", " "), " *");

    internal static (List<string> Texts, List<double> Numbers) Cut(string line)
    {
        var (texts, numbers, at) = (new List<string>(), new List<double>(), 0);
        foreach (var match in NumberPattern().EnumerateMatches(line))
        {
            texts.Add(line[at..match.Index]);
            numbers.Add(double.Parse(line.AsSpan(match.Index, match.Length).ToString().Replace(" ", "").Replace(',', '.'), System.Globalization.CultureInfo.InvariantCulture));
            at = match.Index + match.Length;
        }

        texts.Add(line[at..]);
        return (texts, numbers);
    }

    [GeneratedRegex(@"(?:[-+] *)?\d+(?:[.,]\d+)?")]
    private static partial Regex NumberPattern();

    [GeneratedRegex(" +")]
    private static partial Regex Blanks();
}
