namespace ScaleLink.Measure.Sentences;

/// <summary>
/// An argument as it is written into a sentence, before its format is known. It fits into no other text: a plain string that took it would be in
/// kilograms on every device.
/// </summary>
public readonly ref struct ArgumentHole
{
    private readonly double _value;
    private readonly Unit _unit;
    private readonly bool _isBare;

    internal ArgumentHole(double value, Unit unit, bool isBare = false) => (_value, _unit, _isBare) = (value, unit, isBare);

    /// <summary>With a format such as 0.00, 0.##, or +0.0 for one that shows a plus too; without any the number has all its decimals.</summary>
    /// <exception cref="FormatException">Another format.</exception>
    internal Argument As(string? format) => Argument.Formatted(_value, _unit, format) with { IsBare = _isBare };
}
