using System.Globalization;
using System.Text;

namespace ScaleLink.Measure.Sentences;

/// <summary>
/// The one rule for text from outside, at whatever door it comes in: what shows nothing and yet changes what is read (controls such as escape, marks
/// that turn the direction of writing, separators of lines and paragraphs, private signs, halves of pairs) does not pass.
/// </summary>
public static class PlainText
{
    /// <summary>Signs that show, at most <paramref name="most"/> UTF-16 units of them, without space at the ends. Tabs and ends of lines become spaces.</summary>
    public static string Clean(string? text, int most)
    {
        var clean = new StringBuilder();
        foreach (var rune in (text ?? "").AsSpan().Trim().EnumerateRunes())
        {
            var sign = rune.Value is '\t' or '\n' or '\r' ? new Rune(' ') : rune;
            if (!Shows(sign))
                continue;
            if (clean.Length + sign.Utf16SequenceLength > most)
                break;
            clean.Append(sign.ToString());
        }

        return clean.ToString().Trim();
    }

    /// <summary>Whether a text is the same after cleaning, but for space at its ends.</summary>
    public static bool IsClean(string text, int most) => text.Length <= most && Clean(text, most) == text.Trim();

    // Half a pair is read as the replacement character.
    private static bool Shows(Rune rune) => rune != Rune.ReplacementChar && Rune.GetUnicodeCategory(rune) is not
        (UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.Surrogate or UnicodeCategory.PrivateUse
        or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator);
}
