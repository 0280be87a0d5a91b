using ScaleLink.Api.V1;

namespace ScaleLink.Board.Readings;

/// <summary>Values with their interval and unit, as they stand in tables and sentences.</summary>
internal static class Shown
{
    private const string Nothing = "\u2013";

    public static string Load(Quantity? kilograms, MassUnit unit, bool isSigned = false) => kilograms is null ? Nothing : Full(Figure.Load(kilograms, unit, isSigned), unit.Name);

    /// <summary>A mass to the gram or its like, for those who prove pads; without its unit.</summary>
    public static string Grams(double kilograms, MassUnit unit, bool isSigned = false) =>
        (kilograms / unit.Kilograms).ToString(isSigned ? "+0.000;\u22120.000;0.000" : "0.000;\u22120.000");

    public static string Percent(Quantity? percent) => percent is null ? Nothing : Full(Figure.Percent(percent), "%");

    public static string Length(Quantity? millimetres, LengthUnit unit, bool isSigned = false) => millimetres is null
        ? Nothing
        : $"{unit.Show(millimetres.Value, isSigned)} {unit.Name}{(Coverage.Expanded(millimetres) is { } u ? $" \u00b1 {unit.Show(u)}" : "")}";

    /// <summary>A correction of the patch in a reading: its size at the wheel that it changes most.</summary>
    public static string Correction(PatchInReading correction, MassUnit unit) => correction.SizeKg is { } kg
        ? $"{correction.Name} {new[] { kg.Lf, kg.Rf, kg.Lr, kg.Rr }.Max(Math.Abs) / unit.Kilograms:0.0} {unit.Name} corrected"
        : $"{correction.Name} not corrected: refused";

    public static string Time(Google.Protobuf.WellKnownTypes.Timestamp? at) => at is null ? Nothing : $"{at.ToDateTimeOffset():yyyy-MM-dd HH:mm}Z";

    private static string Full(Figure figure, string unit) => figure.IsRough ? $"{figure.Text} {unit}" : $"{figure.Value} {unit} \u00b1 {figure.Uncertainty}";
}
