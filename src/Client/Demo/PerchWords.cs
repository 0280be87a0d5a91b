using ScaleLink.Client.Readings;

namespace ScaleLink.Client.Demo;

/// <summary>Perch turns in the crew's words.</summary>
internal static class PerchWords
{
    private static readonly string[] Rich = ["", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞"];
    private static readonly string[] Plain = ["", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"];

    /// <summary>"RF, LR up ¼ turn, LF, RR down ⅛".</summary>
    public static string Of(PerchMove move, Glyphs glyphs) => string.Join(", ", Pairs(move, glyphs, ", ", " turn"));

    /// <summary>The same, short, for the label of a step.</summary>
    public static string Label(PerchMove move, Glyphs glyphs) => string.Join(", ", Pairs(move, glyphs, " ", ""));

    // The pair that goes up is named first.
    private static IEnumerable<string> Pairs(PerchMove move, Glyphs glyphs, string between, string unit) =>
        new[] { (Pair: $"RF{between}LR", Eighths: move.RightFrontPair), (Pair: $"LF{between}RR", Eighths: move.LeftFrontPair) }
            .Where(p => p.Eighths != 0)
            .OrderByDescending(p => p.Eighths)
            .Select((p, i) => $"{p.Pair} {(p.Eighths > 0 ? "up" : "down")} {Turns(Math.Abs(p.Eighths), glyphs)}{(i == 0 ? unit : "")}");

    private static string Turns(int eighths, Glyphs glyphs)
    {
        var (whole, part) = (eighths / 8, (glyphs.IsRich ? Rich : Plain)[eighths % 8]);
        return (whole, part) switch
        {
            (0, _) => part,
            (_, "") => $"{whole}",
            _ => glyphs.IsRich ? $"{whole}{part}" : $"{whole} {part}",
        };
    }
}
