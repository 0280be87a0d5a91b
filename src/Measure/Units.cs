namespace ScaleLink.Measure;

/// <summary>What a device, a browser or a terminal, shows loads and lengths in: everywhere on it, or nowhere. Their sources stand at <see cref="Unit"/>.</summary>
/// <param name="Mass">Kilogram or pound.</param>
/// <param name="Length">Millimetre or inch; rates go with it.</param>
public sealed record Units(Unit Mass, Unit Length)
{
    /// <summary>Kilograms and millimetres: what holds where nothing was chosen.</summary>
    public static Units Metric { get; } = new(Unit.Kilogram, Unit.Millimetre);

    /// <summary>Pounds and inches.</summary>
    public static Units PoundInch { get; } = new(Unit.Pound, Unit.Inch);

    /// <summary>Spring and tyre rates: N/mm, or lb/in beside inches.</summary>
    public Unit Rate => Length == Unit.Inch ? Unit.PoundPerInch : Unit.NewtonPerMillimetre;

    /// <summary>Tyre pressures: bar, or psi beside pounds.</summary>
    public Unit Pressure => Mass == Unit.Pound ? Unit.Psi : Unit.Bar;

    /// <summary>What stands in for a base unit on this device: its mass for kg, its length for mm and so on; the same unit for a kind that has one alone.</summary>
    public Unit For(string sign) => sign switch
    {
        "kg" => Mass,
        "mm" => Length,
        "N/mm" => Rate,
        "bar" => Pressure,
        "%" => Unit.Percent,
        "°" => Unit.Degree,
        _ => new(sign, 1, 0, 1, 2),
    };

    /// <summary>As one word: "kg-mm", "lb-in".</summary>
    public string Name => $"{Mass.Sign}-{Length.Sign}";

    /// <summary>Of a device that says them by their signs; kg and mm for what it does not say.</summary>
    public static Units Named(string? mass, string? length) => new(Unit.Named(mass, Unit.Kilogram, Unit.Pound), Unit.Named(length, Unit.Millimetre, Unit.Inch));

    /// <summary>The ones of that one word; kg and mm for any other.</summary>
    public static Units Named(string? name) => name == PoundInch.Name ? PoundInch : Metric;
}
