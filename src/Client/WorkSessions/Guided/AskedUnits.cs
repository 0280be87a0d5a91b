using System.Globalization;
using ScaleLink.Measure;

namespace ScaleLink.Client.WorkSessions.Guided;

/// <summary>
/// The unit that a check asks its value in. A list says "bar, LF RF LR RR"; a terminal in pounds and inches asks for psi, and puts that behind the
/// numbers: a value stands on record as it was told.
/// </summary>
internal static class AskedUnits
{
    /// <summary>What is asked for, in the units of the terminal.</summary>
    public static string Of(string asks, Units units) => Split(asks) is var (unit, rest) && Other(unit, units) is { } other ? other.Sign + rest : asks;

    /// <summary>What was typed, with the unit behind it when it is numbers alone and the list asks in another one.</summary>
    public static string With(string typed, string asks, Units units) =>
        Other(Split(asks).Unit, units) is { } other && typed.Split([' ', ','], StringSplitOptions.RemoveEmptyEntries) is { Length: > 0 } parts
            && parts.All(p => double.TryParse(p, NumberStyles.Float, CultureInfo.InvariantCulture, out _))
            ? $"{typed.Trim()} {other.Sign}"
            : typed;

    private static (string Unit, string More) Split(string asks) => asks.IndexOf(',', StringComparison.Ordinal) is >= 0 and var end ? (asks[..end], asks[end..]) : (asks, "");

    private static Unit? Other(string unit, Units units) => unit switch
    {
        "kg" when units.Mass != Unit.Kilogram => units.Mass,
        "mm" when units.Length != Unit.Millimetre => units.Length,
        "bar" when units.Pressure != Unit.Bar => units.Pressure,
        _ => null,
    };
}
