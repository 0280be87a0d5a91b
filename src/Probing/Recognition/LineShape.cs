using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace ScaleLink.Probing.Recognition;

/// <summary>The common shape of lines: numbers, and the text between them.</summary>
internal sealed partial class LineShape
{
    private const int MostWordings = 6, LinesToCount = 5;
    private const double SameStep = 1e-9;

    private readonly List<HashSet<string>> _between;
    private readonly List<double[]> _numbers;

    private LineShape(List<HashSet<string>> between, List<double[]> numbers) => (_between, _numbers) = (between, numbers);

    /// <summary>How many numbers a line has.</summary>
    public int Numbers => _numbers.Count;

    /// <summary>The shape that most of the lines have; nothing when they have no number in common.</summary>
    public static LineShape? Of(IReadOnlyList<string> lines)
    {
        var cut = lines.Select(Cut).Where(c => c.Numbers.Count > 0).ToList();
        var common = cut.GroupBy(c => c.Numbers.Count).MaxBy(g => g.Count());
        if (common is null)
            return null;
        var between = Enumerable.Range(0, common.Key + 1).Select(k => common.Select(c => c.Texts[k]).ToHashSet(StringComparer.Ordinal)).ToList();
        var numbers = Enumerable.Range(0, common.Key).Select(k => common.Select(c => c.Numbers[k]).ToArray()).ToList();
        return between.Exists(b => b.Count > MostWordings) ? null : new LineShape(between, numbers);
    }

    /// <summary>The text before a number, counted from 0; several wordings joined.</summary>
    public string Before(int number) => string.Join(' ', _between[number]);

    /// <summary>The text behind a number.</summary>
    public string After(int number) => string.Join(' ', _between[number + 1]);

    /// <summary>The values of a number, line by line.</summary>
    public IReadOnlyList<double> Values(int number) => _numbers[number];

    /// <summary>Whether it goes on by the same step from line to line, as a clock or a counter does.</summary>
    public bool Counts(int number)
    {
        var values = _numbers[number];
        return values.Length >= LinesToCount && values[1] != values[0] && values.Zip(values.Skip(1), (a, b) => b - a).All(step => Math.Abs(step - (values[1] - values[0])) < SameStep);
    }

    /// <summary>The words for a state that were heard.</summary>
    public IReadOnlyList<string> States => [.. _between.SelectMany((b, k) => b.SelectMany(t => Wording.States(t, k > 0))).Distinct().Order(StringComparer.Ordinal)];

    /// <summary>The words for net and gross that were heard.</summary>
    public IReadOnlyList<string> NetAndGross => [.. _between.SelectMany(b => b.SelectMany(Wording.NetAndGross)).Distinct().Order(StringComparer.Ordinal)];

    /// <summary>Whether at one place it was net in some lines and gross in others.</summary>
    public bool MixesNetAndGross => _between.Exists(b => b.Select(t => string.Join(' ', Wording.NetAndGross(t))).Distinct().Count() > 1);

    /// <summary>A regular expression for it; <paramref name="group"/> names the numbers that are wanted, others stay without a name.</summary>
    public string ToPattern(Func<int, string?> group)
    {
        var pattern = new StringBuilder();
        for (var number = 0; number < Numbers; number++)
        {
            pattern.Append(Wording.Pattern(_between[number], number > 0));
            const string Number = @"[-+]? *\d+(?:[.,]\d+)?";
            pattern.Append(group(number) is { } name ? $"(?<{name}>{Number})" : Number);
        }

        return pattern.Append(Wording.Pattern(_between[^1], isBehindNumber: true)).ToString();
    }

    internal static (List<string> Texts, List<double> Numbers) Cut(string line)
    {
        var (texts, numbers, at) = (new List<string>(), new List<double>(), 0);
        foreach (var match in NumberPattern().EnumerateMatches(line))
        {
            texts.Add(line[at..match.Index]);
            numbers.Add(double.Parse(line.AsSpan(match.Index, match.Length).ToString().Replace(" ", "").Replace(',', '.'), CultureInfo.InvariantCulture));
            at = match.Index + match.Length;
        }

        texts.Add(line[at..]);
        return (texts, numbers);
    }

    [GeneratedRegex(@"(?:[-+] *)?\d+(?:[.,]\d+)?")]
    private static partial Regex NumberPattern();
}
