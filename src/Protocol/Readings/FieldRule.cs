using ScaleLink.Protocol.PadFrames;

namespace ScaleLink.Protocol.Readings;

/// <summary>
/// Where a number goes and what it is worth there. A number that cannot be (not a number, beyond its range) is left out of the
/// reading, and the reading's status says which sensor failed: it is never made into a value.
/// </summary>
sealed record FieldRule
{
    const double MostTiltDegrees = 90;
    const double ColdestCelsius = -100;
    const double WarmestCelsius = 200;

    /// <summary>What the number stands for.</summary>
    public required FieldMeaning Meaning { get; init; }

    /// <summary>Its unit, which has to fit the meaning.</summary>
    public required FieldUnit Unit { get; init; }

    /// <summary>The number times this is in <see cref="Unit"/>.</summary>
    public double Scale { get; init; } = 1;

    /// <summary>The number with which the device says that it has none; absent when it has no such number.</summary>
    public double? Absent { get; init; }

    /// <summary>Which cell a load belongs to, from 0.</summary>
    public int Cell { get; init; }

    /// <summary>What the bits of a status word mean; bits that are not named are ignored.</summary>
    public IReadOnlyList<StatusBit> Bits { get; init; } = [];

    /// <summary>Puts the number into the reading.</summary>
    internal void Apply(double number, ref PadReading reading)
    {
        var value = number == Absent ? double.NaN : FieldUnits.Convert(number * Scale, Unit);
        switch (Meaning)
        {
            case FieldMeaning.Load when Math.Abs(value) <= int.MaxValue:
                reading.SetCount(Cell, (int)Math.Round(value));
                break;
            case FieldMeaning.Load:
                reading.SetCount(Cell, 0);
                reading.Status |= PadStatus.ConverterFault;
                break;
            case FieldMeaning.Pitch:
                reading.PitchDegrees = Within(value, -MostTiltDegrees, MostTiltDegrees, PadStatus.TiltFault, ref reading);
                break;
            case FieldMeaning.Roll:
                reading.RollDegrees = Within(value, -MostTiltDegrees, MostTiltDegrees, PadStatus.TiltFault, ref reading);
                break;
            case FieldMeaning.Temperature:
                reading.TemperatureCelsius = Within(value, ColdestCelsius, WarmestCelsius, PadStatus.TemperatureFault, ref reading);
                break;
            default:
                Report((uint)(long)number, ref reading);
                break;
        }
    }

    static double? Within(double value, double least, double most, PadStatus otherwise, ref PadReading reading)
    {
        if (value >= least && value <= most)
            return value;
        reading.Status |= otherwise;
        return null;
    }

    void Report(uint bits, ref PadReading reading)
    {
        for (var index = 0; index < Bits.Count; index++)
            if ((bits >> Bits[index].Bit & 1) != 0)
                reading.Status |= Bits[index].Means;
    }
}
