using ScaleLink.Weighing.Statistics;

namespace ScaleLink.Weighing.Calibration.Masses;

/// <summary>Something whose mass is known well enough to calibrate a pad with.</summary>
/// <param name="Label">What is written on it; unique within a set.</param>
/// <param name="Kg">Its mass: the conventional mass where a certificate or a class gives one.</param>
/// <param name="ToleranceKg">Limit of its error either way.</param>
/// <param name="StandardUncertaintyKg">One standard uncertainty.</param>
/// <param name="Lot">
/// Masses of one lot may err together: same class and maker, same reference, same batch. Between lots errors are independent.
/// </param>
/// <param name="DensityKgPerM3">For the buoyancy of air.</param>
/// <param name="ByVolume">
/// True in procedures of before water was taken as it weighs in air: <paramref name="Kg"/> is then the mass in vacuum of a volume, and
/// buoyancy is still in it.
/// </param>
sealed record KnownMass(
    string Label, double Kg, double ToleranceKg, double StandardUncertaintyKg, string Lot, double DensityKgPerM3 = 8000, bool ByVolume = false)
{
    /// <summary>A weight of an OIML class at its nominal value; the tolerance counts as a rectangular distribution.</summary>
    /// <exception cref="RefusedException">SL-317: the class has no tolerance for this nominal value.</exception>
    public static KnownMass OfClass(string label, double nominalKg, WeightClass weightClass)
    {
        var tolerance = WeightTolerances.ToleranceKg(nominalKg, weightClass)
            ?? throw new RefusedException(CalibrationCodes.MassWithoutTolerance.Because($"{label}, {Arguments.Kg(nominalKg)} in class {weightClass}"));
        return new KnownMass(label, nominalKg, tolerance, TypeB.Rectangular(tolerance), $"class {weightClass}");
    }

    /// <summary>A mass with a certificate: its value and expanded uncertainty.</summary>
    /// <exception cref="RefusedException">SL-317: value, uncertainty or factor is not above zero.</exception>
    public static KnownMass Certified(string label, double kg, double expandedUncertaintyKg, double coverageFactor = 2, string lot = "certificate")
    {
        Require(label, kg, expandedUncertaintyKg);
        Require(label, kg, coverageFactor);
        return new KnownMass(label, kg, expandedUncertaintyKg, expandedUncertaintyKg / coverageFactor, lot);
    }

    /// <summary>
    /// A plate, a person, a lump weighed on another scale: a value and its limits either way, as a rectangular distribution.
    /// </summary>
    /// <exception cref="RefusedException">SL-317: value or limit is not above zero.</exception>
    public static KnownMass Stated(string label, double kg, double plusMinusKg, string lot = "stated", double densityKgPerM3 = 7100)
    {
        Require(label, kg, plusMinusKg);
        return new KnownMass(label, kg, plusMinusKg, TypeB.Rectangular(plusMinusKg), lot, densityKgPerM3);
    }

    /// <summary>
    /// A drum filled to a known volume of water, in litres, with its limits either way; the tare is weighed apart. Its mass is what it
    /// weighs in air against weights: the correction is known, so it is made (JCGM 100:2008, 3.2.4), and what is left is uncertainty.
    /// </summary>
    /// <param name="label">What is written on it.</param>
    /// <param name="litres">Volume.</param>
    /// <param name="plusMinusLitres">Its limits either way.</param>
    /// <param name="temperatureC">Of the water, °C; null where nobody measured it.</param>
    /// <exception cref="RefusedException">SL-317: volume or limit is not above zero, or the water is no liquid that the table knows.</exception>
    public static KnownMass Water(string label, double litres, double plusMinusLitres, double? temperatureC = null)
    {
        Require(label, litres, plusMinusLitres);
        if (temperatureC is { } stated && !(stated >= WaterDensity.LowestC && stated <= WaterDensity.HighestC))
            throw new RefusedException(CalibrationCodes.MassWithoutTolerance.Because(
                $"{label} says {stated} °C; the density of water is known from {WaterDensity.LowestC} to {WaterDensity.HighestC} °C"));
        var density = WaterDensity.KgPerM3(temperatureC ?? WaterDensity.UsualC);
        var kgPerLitre = AirBuoyancy.ConventionalMass(density / 1000, density);
        var limit = (plusMinusLitres + WaterDensity.RelativeLimit(temperatureC is not null) * litres) * kgPerLitre;
        return new KnownMass(label, litres * kgPerLitre, limit, TypeB.Rectangular(limit), "water", density);
    }

    static void Require(string label, double kg, double limit)
    {
        if (!(kg > 0 && limit > 0 && double.IsFinite(kg) && double.IsFinite(limit)))
            throw new RefusedException(CalibrationCodes.MassWithoutTolerance.Because($"{label} says {BareKg(kg)} within {BareKg(limit)}; both must be above zero"));
    }
}
