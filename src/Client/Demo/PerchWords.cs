using ScaleLink.Client.Readings;

namespace ScaleLink.Client.Demo;

/// <summary>Perch turns in the crew's words.</summary>
internal static class PerchWords
{
    private static readonly string[] Rich = ["", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞"];
    private static readonly string[] Plain = ["", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"];

    /// <summary>"RF, LR up ¼ turn, LF, RR down ¼".</summary>
    public static string Of(double turns, Glyphs glyphs)
    {
        var size = Turns(Math.Abs(turns), glyphs);
        var (up, down) = turns > 0 ? ("RF, LR", "LF, RR") : ("LF, RR", "RF, LR");
        return $"{up} up {size} turn, {down} down {size}";
    }

    /// <summary>The same for the label of a step.</summary>
    public static string Label(double turns, Glyphs glyphs) => $"{(turns > 0 ? "RF LR" : "LF RR")} up {Turns(Math.Abs(turns), glyphs)}";

    private static string Turns(double turns, Glyphs glyphs)
    {
        var eighths = (int)Math.Round(turns / PerchRule.Least);
        var (whole, part) = (eighths / 8, (glyphs.IsRich ? Rich : Plain)[eighths % 8]);
        return (whole, part) switch
        {
            (0, _) => part,
            (_, "") => $"{whole}",
            _ => glyphs.IsRich ? $"{whole}{part}" : $"{whole} {part}",
        };
    }
}
