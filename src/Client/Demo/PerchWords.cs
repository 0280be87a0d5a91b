using ScaleLink.Client.Readings;

namespace ScaleLink.Client.Demo;

/// <summary>Perch turns in the crew's words.</summary>
internal static class PerchWords
{
    private static readonly string[] Rich = ["", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞"];
    private static readonly string[] Plain = ["", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"];

    /// <summary>"RF, LR up ¼ turn, LF, RR down ⅛".</summary>
    public static string Of(PerchMove move, Glyphs glyphs) => string.Join(", ", Pairs(move)
        .Select((p, i) => $"{p.One}, {p.Other} {(p.Eighths > 0 ? "up" : "down")} {Turns(p.Eighths, glyphs)}{(i == 0 ? " turn" : "")}"));

    /// <summary>"RF LR +¼, LF RR -⅛", for the label of a step.</summary>
    public static string Label(PerchMove move, Glyphs glyphs) => string.Join(", ", Pairs(move)
        .Select(p => $"{p.One} {p.Other} {(p.Eighths > 0 ? "+" : "-")}{Turns(p.Eighths, glyphs)}"));

    // The pair that goes up is named first.
    private static IEnumerable<(string One, string Other, int Eighths)> Pairs(PerchMove move) =>
        new[] { ("RF", "LR", Eighths: move.RightFrontPair), ("LF", "RR", Eighths: move.LeftFrontPair) }
            .Where(p => p.Eighths != 0)
            .OrderByDescending(p => p.Eighths);

    private static string Turns(int eighths, Glyphs glyphs)
    {
        var size = Math.Abs(eighths);
        var (whole, part) = (size / 8, (glyphs.IsRich ? Rich : Plain)[size % 8]);
        return (whole, part) switch
        {
            (0, _) => part,
            (_, "") => $"{whole}",
            _ => glyphs.IsRich ? $"{whole}{part}" : $"{whole} {part}",
        };
    }
}
