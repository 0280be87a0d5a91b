namespace ScaleLink.Weighing.SetupSheets;

/// <summary>What a number of a setup sheet is in.</summary>
/// <param name="Sign">Of the base unit, as <see cref="Unit.Sign"/> has it; empty for a plain number.</param>
/// <param name="Ending">What the field's name ends with in a document.</param>
sealed record SheetUnit(string Sign, string Ending)
{
    public static readonly SheetUnit Length = new("mm", "mm");
    public static readonly SheetUnit Rate = new("N/mm", "n_per_mm");
    public static readonly SheetUnit Pressure = new("bar", "bar");
    public static readonly SheetUnit Mass = new("kg", "kg");
    public static readonly SheetUnit Angle = new("°", "deg");
    public static readonly SheetUnit Share = new("%", "percent");
    public static readonly SheetUnit Volume = new("l", "l");
    public static readonly SheetUnit Temperature = new("°C", "c");
    public static readonly SheetUnit Turns = new("turns", "turns");
    public static readonly SheetUnit Clicks = new("clicks", "clicks");
    public static readonly SheetUnit Steps = new("steps", "");
}
