namespace ScaleLink.Probing.Recognition;

/// <summary>
/// Words in which indicators say how the load is: at rest, moving, beyond the range. Heard is mostly only one of them while nothing moves, and a pattern
/// that takes only what was heard would refuse the car that rocks. Common practice, no published source.
/// </summary>
internal static class StatusWords
{
    private static readonly (string[] Usable, string[] Over)[] Families =
    [
        (["ST", "US", "SD"], ["OL", "UL", "OV"]),
        (["S", "U", "D", "M"], ["O"]),
        (["STABLE", "UNSTABLE", "MOTION", "MOVING", "DYNAMIC"], ["OVER", "OVERLOAD", "UNDER"]),
    ];

    /// <summary>
    /// Net and gross are no state but another number: they stay as they were heard, or a tare at the device would move the load and nobody would know.
    /// </summary>
    public static IReadOnlyList<string> NetAndGross { get; } = ["GS", "NT", "G", "N", "GR", "NET", "GROSS", "TR", "T", "TARE"];

    /// <summary>Whether the word tells a state.</summary>
    public static bool Knows(string word) => Family(word) is not null;

    /// <summary>A part of a regular expression for all words of its kind; those for beyond the range in the group <c>over</c>.</summary>
    public static string? ClassOf(string word)
    {
        if (Family(word) is not { } family)
            return null;
        var isLower = word.Any(char.IsAsciiLetterLower);
        return $"(?:{Join(family.Usable, isLower)}|(?<over>{Join(family.Over, isLower)}))";
    }

    private static (string[] Usable, string[] Over)? Family(string word)
    {
        // A word of its own in mixed letters, such as a name, is none.
        if (word.Any(char.IsAsciiLetterLower) && word.Any(char.IsAsciiLetterUpper))
            return null;
        var at = Array.FindIndex(Families, f => f.Usable.Concat(f.Over).Contains(word, StringComparer.OrdinalIgnoreCase));
        return at < 0 ? null : Families[at];
    }

    private static string Join(string[] words, bool isLower) => string.Join('|', isLower ? words.Select(w => w.ToLowerInvariant()) : words);
}
