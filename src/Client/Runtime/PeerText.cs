using System.Globalization;
using ScaleLink.Measure.Sentences;

namespace ScaleLink.Client.Runtime;

/// <summary>Text from outside on its way to a terminal: after the one cleaning, one column a character.</summary>
internal static class PeerText
{
    private const char FirstWide = '\u1100', Minus = '\u2212';
    private const string Unknown = "?";

    /// <summary>At most <paramref name="most"/> printable characters, each one column wide; longer text ends in "...".</summary>
    public static string Clean(string? text, int most)
    {
        var clean = string.Concat(PlainText.Clean(text, int.MaxValue).EnumerateRunes().Select(r => OneColumn(r.Value))).Trim();
        return clean.Length <= most ? clean : $"{clean[..Math.Max(0, most - 3)]}...";
    }

    private static string OneColumn(int rune)
    {
        var isPunctuation = rune is >= 0x2010 and <= 0x2027 or >= 0x2030 and <= 0x205e;
        // One-eighth of a turn and its like: what a crew is told to turn must not become a question mark.
        var isFraction = rune is >= 0x2150 and <= 0x215e;
        if (rune >= FirstWide && rune != Minus && !isPunctuation && !isFraction)
            return Unknown;
        return CharUnicodeInfo.GetUnicodeCategory(rune) switch
        {
            UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark => "",
            UnicodeCategory.OtherNotAssigned => Unknown,
            _ => char.ConvertFromUtf32(rune),
        };
    }
}
