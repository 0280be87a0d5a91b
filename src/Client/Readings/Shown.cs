using ScaleLink.Api.V1;
using ScaleLink.Client.Runtime;
using ScaleLink.Measure;

namespace ScaleLink.Client.Readings;

/// <summary>Values of the daemon as this terminal shows them.</summary>
internal static class Shown
{
    /// <summary>Live loads and their differences.</summary>
    public static ValueText LiveKg(MeasuredValue value, Glyphs glyphs, bool isSigned = false) => ValueText.Live(value.AsValue, glyphs.Units.Mass, isSigned);

    /// <summary>Loads and their differences on record.</summary>
    public static ValueText Kg(MeasuredValue value, Glyphs glyphs, bool isSigned = false) => ValueText.Of(value.AsValue, glyphs.Units.Mass, isSigned);

    /// <summary>Heights and their differences.</summary>
    public static ValueText Mm(MeasuredValue value, Glyphs glyphs, bool isSigned = false) => ValueText.Of(value.AsValue, glyphs.Units.Length, isSigned);

    /// <summary>Shares of the total.</summary>
    public static ValueText Percent(MeasuredValue value) => ValueText.Of(value.AsValue, Unit.Percent);

    /// <summary>Value and interval, for where the unit stands elsewhere.</summary>
    public static string Bare(this ValueText text, Glyphs glyphs) => glyphs.Say(text.Bare);

    /// <summary>Value and interval with their unit.</summary>
    public static string Full(this ValueText text, Glyphs glyphs) => glyphs.Say(text.Full);
}
