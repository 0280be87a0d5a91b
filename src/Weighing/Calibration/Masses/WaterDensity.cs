namespace ScaleLink.Weighing.Calibration.Masses;

/// <summary>
/// Density of water at one atmosphere. Source: M. Tanaka, G. Girard, R. Davis, A. Peuto and N. Bignell, Metrologia 38 (2001) 301-309, equation
/// and Table 1, recommended by the CIPM for pure air-free water from 0 to 40 °C, as third parties transcribe it (water-density.json of the references).
/// </summary>
static class WaterDensity
{
    /// <summary>Taken where nobody says how warm the water is, °C.</summary>
    public const double UsualC = 20;

    /// <summary>End of the table, °C.</summary>
    public const double LowestC = 0;

    /// <summary>The other end, °C.</summary>
    public const double HighestC = 40;

    // From 10 to 25 °C the table lies within +0.15 and -0.12 % of its value at 20 °C.
    const double UnknownTemperature = 0.0015;
    // A kelvin is 0.026 % at 25 °C and less below; salts of drinking water and air in it the rest (common practice, no published source).
    const double StatedTemperature = 0.0005;

    /// <summary>kg/m³.</summary>
    public static double KgPerM3(double celsius)
    {
        var fromDensest = celsius - 3.983035;
        return 999.974950 * (1 - fromDensest * fromDensest * (celsius + 301.797) / (522528.9 * (celsius + 69.34881)));
    }

    /// <summary>How far the water that is used may lie from the table, relative, either way.</summary>
    /// <param name="isTemperatureKnown">It was measured within a kelvin; otherwise the water has 10 to 25 °C.</param>
    public static double RelativeLimit(bool isTemperatureKnown) => isTemperatureKnown ? StatedTemperature : UnknownTemperature;
}
