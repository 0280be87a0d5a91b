namespace ScaleLink.Measure.Sentences;

/// <summary>Quantities as they are written into a sentence: <c>$"The total changed by {Kg(change):+0.0}."</c></summary>
public static class Quantities
{
    /// <summary>A mass, with its unit.</summary>
    public static QuantityHole Kg(double kilograms) => new(kilograms, Unit.Kilogram);

    /// <summary>A mass as a number alone, where the unit stands elsewhere in the sentence.</summary>
    public static QuantityHole BareKg(double kilograms) => new(kilograms, Unit.Kilogram, isBare: true);

    /// <summary>A length, with its unit.</summary>
    public static QuantityHole Mm(double millimetres) => new(millimetres, Unit.Millimetre);

    /// <summary>A length as a number alone, where the unit stands elsewhere in the sentence.</summary>
    public static QuantityHole BareMm(double millimetres) => new(millimetres, Unit.Millimetre, isBare: true);
}
