using System.Globalization;
using System.Text.RegularExpressions;

namespace ScaleLink.Client.Setup;

/// <summary>Masses as people say them, "8 x 50 kg, M1; plate 12.5 kg, within 0.05", as lines of a masses file.</summary>
internal static partial class MassText
{
    private const int MostPieces = 40;

    /// <summary>A line for each piece, with labels that tell them apart; in <paramref name="unit"/> (kg or lb) where no other stands behind it. What is not understood stays as it is, and is told by whoever reads the lines.</summary>
    public static IReadOnlyList<string> Lines(string said, string unit) => [.. said.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).SelectMany(s => Pieces(s, unit))];

    private static IEnumerable<string> Pieces(string said, string unit)
    {
        if (Group().Match(said) is not { Success: true } group)
            return [said];
        var pieces = group.Groups["pieces"].Success ? int.Parse(group.Groups["pieces"].Value, CultureInfo.InvariantCulture) : 1;
        var (mass, known) = (group.Groups["mass"].Value.Trim(), group.Groups["known"].Value.Trim());
        if (char.IsAsciiDigit(mass[^1]))
            mass += $" {unit}";
        return pieces is > 0 and <= MostPieces ? Enumerable.Range(0, pieces).Select(k => $"{mass} {Letter(k)}, {mass}, {known}") : [said];
    }

    private static string Letter(int number) => number < 26 ? $"{(char)('A' + number)}" : $"A{(char)('A' + number - 26)}";

    [GeneratedRegex(@"^(?:(?<pieces>\d{1,3})\s*[x×*]\s*)?(?<mass>\d+(?:\.\d+)?\s*(?:kg|lb)?)\s*,\s*(?<known>.+)$")]
    private static partial Regex Group();
}
