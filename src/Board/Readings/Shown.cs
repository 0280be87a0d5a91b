using ScaleLink.Api.V1;

namespace ScaleLink.Board.Readings;

/// <summary>Values with their interval and unit, as they stand in tables and sentences.</summary>
internal static class Shown
{
    private const string Nothing = "\u2013";

    public static string Load(MeasuredValue? kilograms, Unit unit, bool isSigned = false) => Full(kilograms, unit, isSigned);

    /// <summary>A mass to the gram or its like, for those who calibrate pads; without its unit.</summary>
    public static string Grams(double kilograms, Unit unit, bool isSigned = false) =>
        (kilograms / unit.Factor).ToString(isSigned ? "+0.000;\u22120.000;0.000" : "0.000;\u22120.000");

    public static string Percent(MeasuredValue? percent) => Full(percent, Unit.Percent);

    public static string Length(MeasuredValue? millimetres, Unit unit, bool isSigned = false) => Full(millimetres, unit, isSigned);

    public static string Angle(MeasuredValue? degrees) => Full(degrees, Unit.Degree, isSigned: true);

    /// <summary>A correction of the patch in a reading: its size at the wheel that it changes most.</summary>
    public static string Correction(PatchInReading correction, Unit unit) => correction.SizeKg is { } kg
        ? $"{correction.Name} {new[] { kg.Lf, kg.Rf, kg.Lr, kg.Rr }.Max(Math.Abs) / unit.Factor:0.0} {unit.Sign} corrected"
        : $"{correction.Name} not corrected: refused";

    public static string Time(Google.Protobuf.WellKnownTypes.Timestamp? at) => at is null ? Nothing : at.LocalMinute();

    private static string Full(MeasuredValue? value, Unit unit, bool isSigned = false) => value is null ? Nothing : ValueText.Of(value.AsValue, unit, isSigned).Full;
}
