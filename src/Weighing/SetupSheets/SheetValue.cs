namespace ScaleLink.Weighing.SetupSheets;

/// <summary>What stands in a slot: a number in the base unit of its field, or a text.</summary>
readonly record struct SheetValue(double? Number, string? Text)
{
    public static SheetValue Of(double number) => new(number, null);

    public static SheetValue Of(string text) => new(null, text);

    // A value that went through another unit and back is the same one.
    public bool IsSameAs(SheetValue other) => Number is { } a && other.Number is { } b ? Math.Abs(a - b) <= 1e-9 * Math.Max(1, Math.Abs(a)) : Number is null && other.Number is null && Text == other.Text;

    /// <summary>For people, with its unit.</summary>
    public string Show(SheetField? field, Units units)
    {
        if (Number is not { } number)
            return Text ?? "";
        var unit = units.For(field?.Unit?.Sign ?? "");
        return unit.Sign.Length == 0 ? unit.ShowShortest(number) : $"{unit.ShowShortest(number)}{unit.Suffix}";
    }
}
