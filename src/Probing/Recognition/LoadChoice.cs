using System.Text.RegularExpressions;

namespace ScaleLink.Probing.Recognition;

/// <summary>Which number of a line is most likely the load, and why. Words: common practice, no published source.</summary>
internal static class LoadChoice
{
    private const int ForGross = 5, ForUnit = 4, ForWord = 2, ForChange = 1, AgainstTare = -9;

    private static readonly string[] GrossWords = ["gross", "gs", "g", "gr"];
    private static readonly string[] LoadWords = ["load", "weight", "net", "nt", "n", "wt", "mass"];
    private static readonly string[] TareWords = ["tare", "tr", "t", "pt"];

    /// <summary>The number and the reason, in words that go on from "because".</summary>
    public static (FoundNumber Number, string Why) Of(IReadOnlyList<FoundNumber> numbers)
    {
        var possible = numbers.Where(n => n.MayBeLoad).ToList();
        if (possible.Count == 0)
            possible = [.. numbers];
        if (possible.Count == 1)
            return (possible[0], "no other number of the line may be one");
        var best = possible.OrderByDescending(Rank).ThenByDescending(n => Math.Max(Math.Abs(n.Least), Math.Abs(n.Largest))).First();
        var rivals = possible.Where(n => n != best && Rank(n) == Rank(best)).ToList();
        return (best, rivals.Count > 0 ? "it is the largest, and nothing else tells them apart" : Why(best));
    }

    private static int Rank(FoundNumber number) =>
        (Says(number, GrossWords) ? ForGross : Says(number, LoadWords) ? ForWord : 0)
        + (number.Unit is null ? 0 : ForUnit) + (number.Least < number.Largest ? ForChange : 0) + (Says(number, TareWords) ? AgainstTare : 0);

    private static string Why(FoundNumber number) =>
        Says(number, GrossWords) ? "the word before it says gross, which a tare at the device does not move"
        : number.Unit is not null ? "a unit of mass stands behind it"
        : Says(number, LoadWords) ? "the word before it says so"
        : "it changes from line to line";

    private static bool Says(FoundNumber number, string[] words) => Regex.Split(number.Before.ToLowerInvariant(), "[^a-z]+").Intersect(words).Any();
}
