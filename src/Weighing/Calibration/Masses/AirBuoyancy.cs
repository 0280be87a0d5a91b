namespace ScaleLink.Weighing.Calibration.Masses;

/// <summary>
/// What the buoyancy of air can do to a calibration. Carried as uncertainty only: for masses of class M on a pad with
/// tenths of a kilogram it lies far below what can be seen. Source of the relations: OIML D 28:2004, OIML R 111-1:2004.
/// </summary>
static class AirBuoyancy
{
    /// <summary>Conventional density of air, kg/m³.</summary>
    public const double AirDensity = 1.2;

    /// <summary>Conventional density of a weight, kg/m³.</summary>
    public const double WeightDensity = 8000;

    // Air in a workshop stays within a tenth of the convention (R 111-1, from memory).
    const double AirVariation = 0.1;

    /// <summary>Limit of the relative error that buoyancy causes for one mass.</summary>
    public static double RelativeLimit(KnownMass mass)
    {
        ArgumentNullException.ThrowIfNull(mass);
        var variation = AirVariation * AirDensity / mass.DensityKgPerM3;
        // A weighing in air already holds the buoyancy at conventional density; a volume does not.
        return mass.ByVolume ? AirDensity * (1 / mass.DensityKgPerM3 - 1 / WeightDensity) + variation : variation;
    }

    /// <summary>True mass from conventional mass, kg, for a material of density <paramref name="density"/> in kg/m³.</summary>
    public static double TrueMass(double conventionalKg, double density) =>
        conventionalKg * (1 - AirDensity / WeightDensity) / (1 - AirDensity / density);

    /// <summary>
    /// Density of moist air, kg/m³. Source: CIPM exponential approximation, OIML R 111-1:2004 E.3 (from memory).
    /// </summary>
    /// <param name="pressureHPa">Air pressure, hPa.</param>
    /// <param name="humidityPercent">Relative humidity, %.</param>
    /// <param name="temperatureC">Air temperature, °C.</param>
    public static double DensityOfAir(double pressureHPa, double humidityPercent, double temperatureC) =>
        (0.34848 * pressureHPa - 0.009 * humidityPercent * Math.Exp(0.061 * temperatureC)) / (273.15 + temperatureC);
}
