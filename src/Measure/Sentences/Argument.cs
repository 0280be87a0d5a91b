using System.Globalization;
using System.Text.RegularExpressions;

namespace ScaleLink.Measure.Sentences;

/// <summary>A number of a sentence, with what it needs to be written in another unit.</summary>
/// <param name="Value">In <paramref name="Unit"/>.</param>
/// <param name="Unit">The base unit of its kind: kilogram or millimetre.</param>
/// <param name="Decimals">In that unit. Null: as many as the number has.</param>
public sealed partial record Argument(double Value, Unit Unit, int? Decimals)
{
    /// <summary>Noughts at the end are left out: 0.5, not 0.50.</summary>
    public bool IsShortest { get; init; }

    /// <summary>A plus before what is above zero.</summary>
    public bool IsSigned { get; init; }

    /// <summary>The number alone: the sentence says the unit elsewhere, or not at all.</summary>
    public bool IsBare { get; init; }

    /// <summary>In another unit of its kind, with as many decimals as mean the same there.</summary>
    public string In(Unit unit)
    {
        ArgumentNullException.ThrowIfNull(unit);
        var number = unit == Unit ? Value : Value * Unit.Factor / unit.Factor;
        var size = Size(Math.Abs(number), unit);
        var isZero = size.All(c => c is '0' or '.');
        return $"{(isZero ? "" : number < 0 ? "-" : IsSigned && number > 0 ? "+" : "")}{size}{(IsBare ? "" : unit.Suffix)}";
    }

    internal static Argument Formatted(double value, Unit unit, string? format)
    {
        if (format is null)
            return new(value, unit, null);
        var parts = Formats().Match(format);
        if (!parts.Success)
            throw new FormatException($"An argument in a sentence is written as 0.0, 0.## or +0.0, not as {format}.");
        var decimals = parts.Groups["decimals"].Value;
        return new(value, unit, decimals.Length) { IsShortest = decimals.StartsWith('#'), IsSigned = parts.Groups["plus"].Success };
    }

    private string Size(double size, Unit unit)
    {
        if (Decimals is null && unit == Unit)
            return size.ToString(CultureInfo.InvariantCulture);
        var finer = unit.LiveDecimals - Unit.LiveDecimals;
        var decimals = Decimals is { } stated ? Math.Clamp(stated + finer, 0, Math.Max(stated, unit.Decimals)) : unit.Decimals;
        return size.ToString($"0.{new string(IsShortest || Decimals is null ? '#' : '0', decimals)}", CultureInfo.InvariantCulture);
    }

    [GeneratedRegex(@"^(?<plus>\+)?0(\.(?<decimals>0+|#+))?$")]
    private static partial Regex Formats();
}
