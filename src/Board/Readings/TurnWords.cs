using System.Globalization;
using ScaleLink.Api.V1;

namespace ScaleLink.Board.Readings;

/// <summary>Turns of a perch as they are called out.</summary>
internal static class TurnWords
{
    private static readonly string[] Eighths = ["", "\u215b", "\u00bc", "\u215c", "\u00bd", "\u215d", "\u00be", "\u215e"];

    /// <summary>A number of turns without its direction: "1¼".</summary>
    public static string Amount(double turns)
    {
        var amount = Math.Abs(turns);
        var eighths = (int)Math.Round(8 * amount);
        if (Math.Abs(8 * amount - eighths) > 1e-6)
            return amount.ToString("0.##", CultureInfo.InvariantCulture);
        var (whole, part) = (eighths / 8, Eighths[eighths % 8]);
        return whole > 0 || part.Length == 0 ? $"{whole}{part}" : part;
    }

    /// <summary>A number of turns for programs: every eighth as it is, "-1.625".</summary>
    public static string Exact(double turns) => turns.ToString(CultureInfo.InvariantCulture);

    /// <summary>"up 1¼", "down ½", or a dash.</summary>
    public static string Of(double turns) => turns == 0 ? "\u2013" : $"{(turns > 0 ? "up" : "down")} {Amount(turns)}";

    /// <summary>All four in a row, those that move only.</summary>
    public static string Of(CornerNumbers? turns)
    {
        var moved = WireCorners.All.Where(c => turns.At(c) != 0).Select(c => $"{c.Name()} {Of(turns.At(c))}").ToList();
        return moved.Count == 0 ? "none" : string.Join(", ", moved);
    }
}
