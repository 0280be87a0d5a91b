namespace ScaleLink.Measure;

/// <summary>What a value is shown in. Inside everything stays in the base unit of its kind: kg, mm, N/mm, bar, percent, degrees.</summary>
/// <param name="Sign">Stands behind the number.</param>
/// <param name="Factor">One of it in the base unit. Sources: the pound, the inch and standard gravity are exact by definition (NIST Special Publication 811:2008, appendix B.8).</param>
/// <param name="RoughDecimals">Decimals where nothing is claimed.</param>
/// <param name="LiveDecimals">Most decimals on a live view: the crew turns perches by kilograms, and a second decimal would only jump before their eyes.</param>
/// <param name="Decimals">Most decimals anywhere.</param>
public sealed record Unit(string Sign, double Factor, int RoughDecimals, int LiveDecimals, int Decimals)
{
    private const double PoundKg = 0.45359237, InchMm = 25.4, PoundForceN = PoundKg * 9.80665;

    /// <summary>The sign as it follows a number: with a space, but for the degree (NIST Special Publication 811:2008, 7.2).</summary>
    public string Suffix => Sign == "°" ? Sign : $" {Sign}";

    /// <summary>Mass.</summary>
    public static Unit Kilogram { get; } = new("kg", 1, 0, 1, 3);

    /// <summary>Mass, avoirdupois.</summary>
    public static Unit Pound { get; } = new("lb", PoundKg, 0, 1, 3);

    /// <summary>Length.</summary>
    public static Unit Millimetre { get; } = new("mm", 1, 1, 1, 3);

    /// <summary>Length.</summary>
    public static Unit Inch { get; } = new("in", InchMm, 2, 3, 4);

    /// <summary>Spring rate.</summary>
    public static Unit NewtonPerMillimetre { get; } = new("N/mm", 1, 0, 1, 2);

    /// <summary>Spring rate, pound-force an inch.</summary>
    public static Unit PoundPerInch { get; } = new("lb/in", PoundForceN / InchMm, 0, 1, 2);

    /// <summary>Pressure.</summary>
    public static Unit Bar { get; } = new("bar", 1, 1, 2, 3);

    /// <summary>Pressure, pound-force a square inch; a bar is 0.1 N/mm².</summary>
    public static Unit Psi { get; } = new("psi", PoundForceN / InchMm / InchMm * 10, 0, 1, 2);

    /// <summary>A part of a whole.</summary>
    public static Unit Percent { get; } = new("%", 1, 1, 2, 2);

    /// <summary>Plane angle.</summary>
    public static Unit Degree { get; } = new("°", 1, 1, 2, 2);

    /// <summary>The one with that sign; the first for a sign that none has.</summary>
    public static Unit Named(string? sign, params IReadOnlyList<Unit> among) => among.FirstOrDefault(u => u.Sign == sign, among[0]);

    /// <summary>A number as it was set, in this unit: as many decimals as it has, at most <see cref="Decimals"/>, without the sign.</summary>
    /// <param name="value">In the base unit.</param>
    public string ShowShortest(double value) => (Math.Round(value / Factor, Decimals) + 0.0).ToString("0.####", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>A number without an uncertainty of its own, such as a height that was asked for, in this unit and without its sign.</summary>
    /// <param name="value">In the base unit.</param>
    /// <param name="isSigned">A plus before what is above zero.</param>
    /// <param name="finer">Decimals more than a live view has.</param>
    public string Show(double value, bool isSigned = false, int finer = 0) => ValueText.Write(value / Factor, -(LiveDecimals + finer), isSigned);
}
