namespace ScaleLink.Protocol.Readings;

/// <summary>Which unit belongs to which meaning, and what it is worth.</summary>
static class FieldUnits
{
    /// <summary>
    /// A device that gives a mass is given counts of this size, kg, so that its loads go the same way as raw counts: a tenth of
    /// a gram, far below any scale's step, and 214 t before the number overflows.
    /// </summary>
    public const double MassStepKg = 0.0001;

    // The international pound, exact (yard and pound agreement of 1959; NIST SP 811, 2008, footnote 22).
    const double PoundKg = 0.45359237;

    /// <summary>The unit that a number has unless something else is said.</summary>
    public static FieldUnit Default(FieldMeaning meaning) => meaning switch
    {
        FieldMeaning.Load => FieldUnit.Count,
        FieldMeaning.Pitch or FieldMeaning.Roll => FieldUnit.Degree,
        FieldMeaning.Temperature => FieldUnit.Celsius,
        _ => FieldUnit.Bits,
    };

    /// <summary>Whether a number of that meaning can have that unit.</summary>
    public static bool Fits(FieldMeaning meaning, FieldUnit unit) => meaning switch
    {
        FieldMeaning.Load => unit is FieldUnit.Count || IsMass(unit),
        FieldMeaning.Pitch or FieldMeaning.Roll => unit is FieldUnit.Degree or FieldUnit.Milliradian,
        FieldMeaning.Temperature => unit is FieldUnit.Celsius or FieldUnit.Fahrenheit,
        _ => unit is FieldUnit.Bits,
    };

    /// <summary>Whether the device itself says what its number weighs.</summary>
    public static bool IsMass(FieldUnit unit) => unit is FieldUnit.Gram or FieldUnit.Kilogram or FieldUnit.Pound;

    /// <summary>Counts, degrees or degrees Celsius.</summary>
    internal static double Convert(double value, FieldUnit unit) => unit switch
    {
        FieldUnit.Gram => value * (0.001 / MassStepKg),
        FieldUnit.Kilogram => value / MassStepKg,
        FieldUnit.Pound => value * (PoundKg / MassStepKg),
        FieldUnit.Milliradian => value * (0.18 / Math.PI),
        FieldUnit.Fahrenheit => (value - 32) / 1.8,
        _ => value,
    };
}
