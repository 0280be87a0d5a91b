using System.Text;
using System.Text.RegularExpressions;

namespace ScaleLink.Probing.Recognition;

/// <summary>The text between two numbers of a line, as a part of a regular expression: blanks of any number, words for a state as a class, the rest as it is.</summary>
internal static partial class Wording
{
    private static readonly string[] Units = ["kg", "g", "lb", "lbs"];

    /// <summary>One pattern for all that was heard at this place.</summary>
    /// <param name="texts">What was heard.</param>
    /// <param name="isBehindNumber">Whether a number stands before it: the first word may then be its unit.</param>
    public static string Pattern(IEnumerable<string> texts, bool isBehindNumber)
    {
        var all = texts.Select(t => Pattern(t, isBehindNumber)).Distinct().Order(StringComparer.Ordinal).ToList();
        return all.Count == 1 ? all[0] : $"(?:{string.Join('|', all)})";
    }

    /// <summary>The words of a text that tell a state.</summary>
    public static IEnumerable<string> States(string text, bool isBehindNumber) => Word().Matches(text).Where(m => IsState(text, m, isBehindNumber)).Select(m => m.Value);

    /// <summary>The words of a text that tell net from gross.</summary>
    public static IEnumerable<string> NetAndGross(string text) => Word().Matches(text).Select(m => m.Value).Where(w => StatusWords.NetAndGross.Contains(w, StringComparer.OrdinalIgnoreCase));

    private static string Pattern(string text, bool isBehindNumber)
    {
        var (pattern, at) = (new StringBuilder(), 0);
        foreach (Match word in Word().Matches(text))
        {
            pattern.Append(Plain(text[at..word.Index])).Append(IsState(text, word, isBehindNumber) ? StatusWords.ClassOf(word.Value) : word.Value);
            at = word.Index + word.Length;
        }

        return pattern.Append(Plain(text[at..])).ToString();
    }

    // A name before its number, as in "S: 12.5", or a unit behind one is no state.
    private static bool IsState(string text, Match word, bool isBehindNumber)
    {
        var rest = text.AsSpan(word.Index + word.Length).TrimStart(' ');
        var isUnit = isBehindNumber && text[..word.Index].AsSpan().Trim(' ').IsEmpty && Units.Contains(word.Value, StringComparer.OrdinalIgnoreCase);
        return !isUnit && rest is not [':' or '=', ..] && StatusWords.Knows(word.Value);
    }

    // Columns are filled up with blanks, as many as the number leaves.
    private static string Plain(string text) => Blanks().Replace(Regex.Escape(text).Replace(@"\ ", " ").Replace(@"\t", " "), " *");

    [GeneratedRegex("[A-Za-z]+")]
    private static partial Regex Word();

    [GeneratedRegex(" +")]
    private static partial Regex Blanks();
}
