using System.Globalization;

namespace ScaleLink.Board.Drawing;

/// <summary>Numbers and paths as SVG writes them.</summary>
internal static class Svg
{
    public static string N(double number) => number.ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>An arc around <paramref name="centre"/> between two angles, degrees, positive downwards on the right.</summary>
    public static string Arc(Point centre, double radius, double fromDegrees, double toDegrees)
    {
        var (from, to) = (centre.Along(radius, fromDegrees), centre.Along(radius, toDegrees));
        return $"M{N(from.X)} {N(from.Y)}A{N(radius)} {N(radius)} 0 0 1 {N(to.X)} {N(to.Y)}";
    }
}

/// <summary>A place in a picture; y downwards.</summary>
internal readonly record struct Point(double X, double Y)
{
    public Point Along(double distance, double degrees)
    {
        var (sine, cosine) = Math.SinCos(double.DegreesToRadians(degrees));
        return new Point(X + distance * cosine, Y + distance * sine);
    }
}
