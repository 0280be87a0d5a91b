using System.Globalization;

namespace ScaleLink.Board.Readings;

/// <summary>Numbers as people type them.</summary>
internal static class Entry
{
    /// <summary>The number; a comma does for a point. Nothing when it is none.</summary>
    public static double? Number(string? text) =>
        double.TryParse(text?.Trim().Replace(',', '.').Replace('\u2212', '-'), NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number) ? number : null;
}
