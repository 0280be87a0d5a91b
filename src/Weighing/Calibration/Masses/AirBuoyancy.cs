namespace ScaleLink.Weighing.Calibration.Masses;

/// <summary>
/// What the buoyancy of air can do to a calibration. For masses of class M on a pad with tenths of a kilogram it lies far below what can
/// be seen and is carried as uncertainty only; for water it is a known thousandth, and taken off. Source of the relations: OIML D 28:2004, OIML R 111-1:2004.
/// </summary>
static class AirBuoyancy
{
    /// <summary>Conventional density of air, kg/m³.</summary>
    public const double AirDensity = 1.2;

    /// <summary>Conventional density of a weight, kg/m³.</summary>
    public const double WeightDensity = 8000;

    // Air of 10 to 30 °C below 400 m stays within a tenth of the convention: by DensityOfAir, see its tests.
    const double AirVariation = 0.1;

    /// <summary>Limit of the relative error that buoyancy causes for one mass.</summary>
    public static double RelativeLimit(KnownMass mass)
    {
        ArgumentNullException.ThrowIfNull(mass);
        var variation = AirVariation * AirDensity / mass.DensityKgPerM3;
        // A weighing in air already holds the buoyancy at conventional density; a volume as it was once recorded does not.
        return mass.ByVolume ? AirDensity * (1 / mass.DensityKgPerM3 - 1 / WeightDensity) + variation : variation;
    }

    /// <summary>
    /// What a body of <paramref name="trueKg"/> weighs in conventional air against weights of conventional density, kg: its conventional mass.
    /// For water that is 1.2 (1/998.2 - 1/8000), 0.105 %, less than its mass. Source: OIML R 111-1:2004, 2.5 and Annex C with OIML D 28:2004, the
    /// relation as read in a transcription of D 28.
    /// </summary>
    /// <param name="trueKg">Mass, kg.</param>
    /// <param name="density">kg/m³.</param>
    public static double ConventionalMass(double trueKg, double density) =>
        trueKg * (1 - AirDensity / density) / (1 - AirDensity / WeightDensity);

    /// <summary>True mass from conventional mass, kg, for a material of density <paramref name="density"/> in kg/m³.</summary>
    public static double TrueMass(double conventionalKg, double density) =>
        conventionalKg * (1 - AirDensity / WeightDensity) / (1 - AirDensity / density);

    /// <summary>
    /// Density of moist air, kg/m³. Source: exponential approximation of the CIPM's formula as an open metrology package
    /// for R transcribes it (oiml-r111-buoyancy.json of the references); OIML R 111-1:2004, E.3, rounds two of its constants.
    /// </summary>
    /// <param name="pressureHPa">Air pressure, hPa.</param>
    /// <param name="humidityPercent">Relative humidity, %.</param>
    /// <param name="temperatureC">Air temperature, °C.</param>
    public static double DensityOfAir(double pressureHPa, double humidityPercent, double temperatureC) =>
        (0.34848 * pressureHPa - 0.009024 * humidityPercent * Math.Exp(0.0612 * temperatureC)) / (273.15 + temperatureC);
}
