using System.Text.RegularExpressions;

namespace ScaleLink.Board.WorkSessions;

/// <summary>Text of the page as a voice says it: corners by their names, eighths as words.</summary>
internal static partial class Spoken
{
    private static readonly Dictionary<char, string> Parts = new()
    {
        ['\u215b'] = "1 eighth", ['\u00bc'] = "1 quarter", ['\u215c'] = "3 eighths", ['\u00bd'] = "a half", ['\u215d'] = "5 eighths", ['\u00be'] = "3 quarters", ['\u215e'] = "7 eighths",
    };

    /// <summary>"LR down 1\u215d turns" becomes "left rear down 1 and 5 eighths turns".</summary>
    public static string Of(string text) => Corners().Replace(Fractions().Replace(text, m => $"{(m.Groups["whole"].Length > 0 ? $"{m.Groups["whole"]} and " : "")}{Parts[m.Groups["part"].Value[0]]}"), m => m.Value switch
    {
        "LF" => "left front",
        "RF" => "right front",
        "LR" => "left rear",
        _ => "right rear",
    }).Replace("\u00b1", "plus or minus ", StringComparison.Ordinal).Replace("%", "percent", StringComparison.Ordinal);

    [GeneratedRegex(@"(?<whole>\d*)(?<part>[\u215b\u00bc\u215c\u00bd\u215d\u00be\u215e])")]
    private static partial Regex Fractions();

    [GeneratedRegex(@"\b(LF|RF|LR|RR)\b")]
    private static partial Regex Corners();
}
