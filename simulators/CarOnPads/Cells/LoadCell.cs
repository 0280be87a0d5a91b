using CarOnPads.Physics;

namespace CarOnPads.Cells;

/// <summary>One bridge with its converter: kilograms in, counts out, with a memory for creep and hysteresis.</summary>
sealed class LoadCell(CellTraits traits, Imperfections imperfections, NoiseSource noise)
{
    double _creep;
    double _loop;
    double _last;

    /// <summary>Zero change, kg per kelvin.</summary>
    public double ZeroPerKelvin => traits.ZeroPerKelvin;

    /// <summary>One reading.</summary>
    /// <param name="kg">Load on this cell along its axis.</param>
    /// <param name="seconds">Since the reading before.</param>
    /// <param name="kelvin">Above the temperature of calibration.</param>
    /// <param name="hum">Mains pick-up now, between about -1 and 1.</param>
    /// <param name="kgPerCount">Nominal.</param>
    public double Read(double kg, double seconds, double kelvin, double hum, double kgPerCount)
    {
        Remember(kg, seconds);
        var seen = kg;
        if (On(Imperfection.UnequalCells))
            seen += kg * traits.Unequal;
        if (On(Imperfection.NonLinearity))
            seen += 4 * traits.BowKg * (kg / CellTraits.CapacityKg) * (1 - kg / CellTraits.CapacityKg);
        if (On(Imperfection.Creep))
            seen += _creep;
        if (On(Imperfection.Hysteresis))
            seen -= _loop;
        if (On(Imperfection.Temperature))
            seen += kelvin * (traits.ZeroPerKelvin + kg * traits.SpanPerKelvin);
        if (On(Imperfection.Hum))
            seen += traits.HumKg * hum;
        if (On(Imperfection.Noise) && seconds > 0)
            seen += CellTraits.NoiseKg * noise.Normal() / Math.Sqrt(CellTraits.NoiseRateHz * seconds);
        var counts = seen / kgPerCount;
        if (On(Imperfection.Offset))
            counts += traits.Offset;
        return On(Imperfection.Quantisation)
            ? Math.Round(counts / CellTraits.CoarseCounts) * CellTraits.CoarseCounts
            : Math.Round(counts);
    }

    // Kept up to date while switched off too, so that switching on finds a cell with a past.
    void Remember(double kg, double seconds)
    {
        _creep += (traits.Creep * kg - _creep) * Math.Min(1, seconds / traits.CreepSeconds);
        _loop = Math.Clamp(
            _loop + CellTraits.HysteresisSlope * (kg - _last), -CellTraits.HysteresisKg, CellTraits.HysteresisKg);
        _last = kg;
    }

    bool On(Imperfection imperfection) => imperfections[imperfection];
}
