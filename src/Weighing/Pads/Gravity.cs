namespace ScaleLink.Weighing.Pads;

/// <summary>
/// Gravity on the ellipsoid, GRS80, by Somigliana's formula, and its fall with height. Source: H. Moritz, Geodetic
/// Reference System 1980; free-air gradient 0.3086 mGal/m.
/// </summary>
static class Gravity
{
    /// <summary>
    /// How far true gravity may lie from this formula, relative, either way: about 5 parts in 100 000, as the National
    /// Physical Laboratory states for formulae of this kind.
    /// </summary>
    public const double RelativeLimit = 5e-5;

    const double Equator = 9.7803267715;
    const double Formula = 0.001931851353;
    const double EccentricitySquared = 0.0066943800229;
    const double FreeAirPerMetre = 3.086e-6;

    /// <summary>m/s², at a geodetic latitude in degrees and a height above sea level in metres.</summary>
    public static double At(double latitudeDeg, double heightM = 0)
    {
        if (!(Math.Abs(latitudeDeg) <= 90))
            throw new ArgumentOutOfRangeException(nameof(latitudeDeg), latitudeDeg, "Latitude lies between -90 and 90 degrees.");
        var sine = Math.Sin(latitudeDeg * Math.PI / 180);
        var square = sine * sine;
        return Equator * (1 + Formula * square) / Math.Sqrt(1 - EccentricitySquared * square) - FreeAirPerMetre * heightM;
    }
}
