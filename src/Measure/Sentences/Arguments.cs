namespace ScaleLink.Measure.Sentences;

/// <summary>Arguments as they are written into a sentence: <c>$"The total changed by {Kg(change):+0.0}."</c></summary>
public static class Arguments
{
    /// <summary>A mass, with its unit.</summary>
    public static ArgumentHole Kg(double kilograms) => new(kilograms, Unit.Kilogram);

    /// <summary>A mass as a number alone, where the unit stands elsewhere in the sentence.</summary>
    public static ArgumentHole BareKg(double kilograms) => new(kilograms, Unit.Kilogram, isBare: true);

    /// <summary>A length, with its unit.</summary>
    public static ArgumentHole Mm(double millimetres) => new(millimetres, Unit.Millimetre);

    /// <summary>A length as a number alone, where the unit stands elsewhere in the sentence.</summary>
    public static ArgumentHole BareMm(double millimetres) => new(millimetres, Unit.Millimetre, isBare: true);
}
