using System.Globalization;

namespace ScaleLink.Measure;

/// <summary>
/// A value as people read it: no finer than its uncertainty supports. U for 95 % keeps one digit, and two where its first is 1 or 2; the value has
/// the same decimals. U is rounded up, so that no more is promised than holds. Source: JCGM 100:2008, 7.2.6 (two digits at most, up, and the value
/// to the same place); when to keep the second digit is common practice, no published source.
/// </summary>
/// <param name="Estimate">The value, without its unit.</param>
/// <param name="Expanded">U; null when nothing is claimed.</param>
/// <param name="Unit">Of both.</param>
public sealed record ValueText(string Estimate, string? Expanded, Unit Unit)
{
    /// <summary>Stands before a value about which nothing is claimed: it shows where things are, no more.</summary>
    public const string About = "~";

    // By so much of its last digit U may be understated: 28.05 becomes 28, as in JCGM 100:2008, 7.2.6.
    private const double Grace = 0.05;
    // What two ways of computing the same U may differ by: 0.3 begins with a 3, however it came about.
    private const double Fuzz = 1e-6;
    private const double LeastForOneDigit = 3;

    /// <summary>Nothing is claimed.</summary>
    public bool IsRough => Expanded is null;

    /// <summary>The value alone, marked when nothing is claimed: "50.12", "~50.1".</summary>
    public string Alone => IsRough ? About + Estimate : Estimate;

    /// <summary>For columns under a head that names the unit: "50.12 ± 0.12", "~50.1".</summary>
    public string Bare => IsRough ? Alone : $"{Estimate} ± {Expanded}";

    /// <summary>For sentences: "50.12 % ± 0.12 %", "~50.1 %".</summary>
    public string Full => IsRough ? $"{Alone}{Unit.Suffix}" : $"{Estimate}{Unit.Suffix} ± {Expanded}{Unit.Suffix}";

    /// <summary>A value in this unit's base unit (kg for pounds, mm for inches) as text in the unit.</summary>
    public static ValueText Of(Value value, Unit unit, bool isSigned = false) => At(value, unit, Place(value, unit, unit.Decimals), isSigned);

    /// <summary>The same on a live view: never finer than the unit's live decimals.</summary>
    public static ValueText Live(Value value, Unit unit, bool isSigned = false) => At(value, unit, Place(value, unit, unit.LiveDecimals), isSigned);

    /// <summary>The place of the last digit that <paramref name="value"/> supports, as a power of ten in the unit, never finer than so many decimals.</summary>
    public static int Place(Value value, Unit unit, int mostDecimals)
    {
        ArgumentNullException.ThrowIfNull(unit);
        if (value.Expanded / unit.Factor is not { } expanded || !double.IsFinite(expanded))
            return -unit.RoughDecimals;
        return expanded > 0 ? Math.Max(-mostDecimals, LastDigit(expanded)) : -mostDecimals;
    }

    /// <summary>The same to a given place.</summary>
    public static ValueText At(Value value, Unit unit, int place, bool isSigned)
    {
        ArgumentNullException.ThrowIfNull(unit);
        var estimate = Write(value.Estimate / unit.Factor, place, isSigned);
        if (value.Expanded / unit.Factor is not { } expanded || !double.IsFinite(expanded))
            return new(estimate, null, unit);
        var step = Math.Pow(10, place);
        return new(estimate, Write(expanded > 0 ? Math.Max(1, Math.Ceiling(expanded / step - Grace - Fuzz)) * step : 0, place, false), unit);
    }

    private static int LastDigit(double expanded)
    {
        var least = expanded * (1 + Fuzz);
        var first = (int)Math.Floor(Math.Log10(least));
        return least / Math.Pow(10, first) < LeastForOneDigit ? first - 1 : first;
    }

    internal static string Write(double value, int place, bool isSigned)
    {
        if (!double.IsFinite(value))
            return "\u2013";
        var step = Math.Pow(10, place);
        var rounded = Math.Round(value / step, MidpointRounding.AwayFromZero) * step;
        // -0.04 to the tenth is 0.0, not -0.0.
        if (Math.Abs(rounded) < step / 2)
            rounded = 0;
        var sign = rounded < 0 ? "\u2212" : isSigned && rounded > 0 ? "+" : "";
        return sign + Math.Abs(rounded).ToString($"F{Math.Max(0, -place)}", CultureInfo.InvariantCulture);
    }
}
