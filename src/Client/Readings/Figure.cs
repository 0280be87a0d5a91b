using ScaleLink.Api.V1;

namespace ScaleLink.Client.Readings;

/// <summary>
/// A number as it may be shown: no finer than its uncertainty supports. The uncertainty is rounded up to one digit, or to two
/// where the first is a 1; the value is rounded to the same place. Source: JCGM 100:2008, 7.2.6 allows two digits at most;
/// when to keep the second is common practice.
/// </summary>
internal sealed record Figure(string Value, string? Uncertainty)
{
    // An uncertainty may be understated by this part of it, so that 0.0301 does not become 0.04.
    private const double Grace = 0.05;
    // No screen needs more: a kilogram's thousandth, a percent's thousandth.
    private const int MostDecimals = 3;

    /// <summary>Nothing is claimed about the value: it shows where things are, no more.</summary>
    public bool IsRough => Uncertainty is null;

    /// <summary>Loads in kg; without a claim to the kilogram.</summary>
    public static Figure Kilograms(Quantity quantity, bool signed = false) => Of(quantity, 1, signed);

    /// <summary>Shares in percent; without a claim to a tenth.</summary>
    public static Figure Percent(Quantity quantity) => Of(quantity, 0.1, false);

    /// <summary>The value alone, marked when it is rough.</summary>
    public string Bare => IsRough ? $"~{Value}" : Value;

    /// <summary>Value and interval.</summary>
    public string Full(Glyphs glyphs) => IsRough ? Bare : $"{Value} {glyphs.PlusMinus}{Uncertainty}";

    private static Figure Of(Quantity quantity, double roughStep, bool signed)
    {
        if (Coverage.Expanded(quantity) is not ({ } expanded and > 0))
            return new Figure(Write(quantity.Value, roughStep, signed), null);
        var (step, shown) = Round(expanded);
        return new Figure(Write(quantity.Value, step, signed), Write(shown, step, false));
    }

    private static (double Step, double Shown) Round(double expanded)
    {
        var least = expanded * (1 - Grace);
        // The first digit of 1.9 is a 1, and of 2 it is not.
        var exponent = Math.Max(-MostDecimals, (int)Math.Floor(Math.Log10(least / 1.9)));
        var step = Power(exponent);
        return (step, Math.Max(1, Math.Ceiling(least / step)) * step);
    }

    private static double Power(int exponent) => Math.Pow(10, exponent);

    private static string Write(double value, double step, bool signed)
    {
        var decimals = Math.Max(0, (int)Math.Round(-Math.Log10(step)));
        // Away from zero: a reading of -0.04 to the tenth is 0.0, not -0.0.
        var text = (Math.Round(value / step, MidpointRounding.AwayFromZero) * step + 0.0).ToString($"F{decimals}");
        var isZero = text.Trim('-', '0', '.').Length == 0;
        text = isZero ? text.TrimStart('-') : text;
        return signed && !isZero && value > 0 ? $"+{text}" : text;
    }
}
