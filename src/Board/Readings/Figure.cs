using ScaleLink.Api.V1;

namespace ScaleLink.Board.Readings;

/// <summary>
/// A number as it may be shown: no finer than its uncertainty supports. The uncertainty keeps one digit and is rounded up,
/// the value is rounded to the same place (JCGM 100:2008, 7.2.6).
/// </summary>
internal sealed record Figure(string Value, string? Uncertainty)
{
    // Rounding to nearest may understate an uncertainty by this part of its digit.
    private const double Grace = 0.05;
    private const int FinestPercent = -3;
    // The crew turns perches by kilograms: a second decimal would only jump before their eyes.
    private const int FinestLoad = -1;

    /// <summary>Nothing is claimed about the value: it shows where things are, no more.</summary>
    public bool IsRough => Uncertainty is null;

    /// <summary>The value, marked when it is rough.</summary>
    public string Text => IsRough ? $"~{Value}" : Value;

    /// <summary>A load or a difference of loads, to a tenth at most; without a claim to the whole unit.</summary>
    public static Figure Load(Quantity kilograms, MassUnit unit, bool isSigned = false) =>
        Of(kilograms.Value / unit.Kilograms, Coverage.Expanded(kilograms) / unit.Kilograms, 1, FinestLoad, isSigned);

    /// <summary>A share in percent; without a claim to a tenth.</summary>
    public static Figure Percent(Quantity percent) => Of(percent.Value, Coverage.Expanded(percent), 0.1, FinestPercent, false);

    private static Figure Of(double value, double? expanded, double roughStep, int finest, bool isSigned)
    {
        if (expanded is not ({ } u and > 0))
            return new Figure(Write(value, roughStep, isSigned), null);
        var (step, shown) = Round(u, finest);
        return new Figure(Write(value, step, isSigned), Write(shown, step, false));
    }

    private static (double Step, double Shown) Round(double expanded, int finest)
    {
        var exponent = Math.Max(finest, (int)Math.Floor(Math.Log10(expanded)));
        var step = Math.Pow(10, exponent);
        var digit = Math.Max(1, Math.Ceiling(expanded / step - Grace));
        return digit < 10 ? (step, digit * step) : (10 * step, 10 * step);
    }

    private static string Write(double value, double step, bool isSigned)
    {
        var decimals = Math.Max(0, (int)Math.Round(-Math.Log10(step)));
        var rounded = Math.Round(value / step, MidpointRounding.AwayFromZero) * step;
        // -0.04 to the tenth is 0.0, not -0.0.
        if (Math.Abs(rounded) < step / 2)
            rounded = 0;
        var sign = rounded < 0 ? "\u2212" : isSigned && rounded > 0 ? "+" : "";
        return sign + Math.Abs(rounded).ToString($"F{decimals}");
    }
}
