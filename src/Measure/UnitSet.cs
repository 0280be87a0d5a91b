namespace ScaleLink.Measure;

/// <summary>The units of one device: one choice, everywhere on it.</summary>
/// <param name="Name">Remembered by the device.</param>
/// <param name="Mass">Loads and masses.</param>
/// <param name="Length">Heights, shims and travels.</param>
/// <param name="SpringRate">Springs and tyres.</param>
/// <param name="Pressure">Tyres.</param>
public sealed record UnitSet(string Name, Unit Mass, Unit Length, Unit SpringRate, Unit Pressure)
{
    /// <summary>kg, mm, N/mm, bar.</summary>
    public static UnitSet Metric { get; } = new("kg", Unit.Kilogram, Unit.Millimetre, Unit.NewtonPerMillimetre, Unit.Bar);

    /// <summary>lb, in, lb/in, psi.</summary>
    public static UnitSet Pounds { get; } = new("lb", Unit.Pound, Unit.Inch, Unit.PoundPerInch, Unit.Psi);

    /// <summary>The set of that name; metric for a name that is not known.</summary>
    public static UnitSet Named(string? name) => name == Pounds.Name ? Pounds : Metric;
}
