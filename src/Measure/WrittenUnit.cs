using System.Globalization;

namespace ScaleLink.Measure;

/// <summary>Units as people write them behind a number.</summary>
public static class WrittenUnit
{
    /// <summary>What one of a written unit is in the base unit of its kind; null when it is no unit of that kind.</summary>
    /// <param name="of">The base unit: mm, N/mm, bar, kg, °C, ° or another that is written by its own sign alone.</param>
    /// <param name="written">As it was written, in whatever case.</param>
    public static double? Factor(string of, string written)
    {
        ArgumentNullException.ThrowIfNull(written);
        return (of, written.ToLowerInvariant()) switch
        {
            ("N/mm", "kn/m") or ("°", "deg") or ("°C", "c") or ("l", "litre" or "litres") => 1,
            ("mm", "cm") => 10,
            ("mm", "m") => 1000,
            ("mm", "in" or "inch" or "\"") => Unit.Inch.Factor,
            ("N/mm", "lb/in" or "lbf/in") => Unit.PoundPerInch.Factor,
            ("bar", "kpa") => 0.01,
            ("bar", "psi") => Unit.Psi.Factor,
            ("kg", "lb" or "lbs") => Unit.Pound.Factor,
            var (sign, same) when sign.Length > 0 && string.Equals(sign, same, StringComparison.OrdinalIgnoreCase) => 1,
            _ => null,
        };
    }

    /// <summary>A number with a unit behind it, in the base unit of its kind; null when it is none. A number alone is in the base unit.</summary>
    /// <param name="of">The base unit.</param>
    /// <param name="text">As it was written, such as "400 lb/in"; decimals with a point.</param>
    public static double? Read(string of, string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var end = text.AsSpan().LastIndexOfAnyInRange('0', '9') + 1;
        var unit = text[end..].Trim();
        return double.TryParse(text[..end], NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingWhite, CultureInfo.InvariantCulture, out var number)
            ? number * (unit.Length == 0 ? 1 : Factor(of, unit)) : null;
    }

    /// <summary>The units of a kind in words, for who wrote none of them.</summary>
    public static string Known(string of) => of switch
    {
        "mm" => "mm, cm, m or in",
        "N/mm" => "N/mm or lb/in",
        "bar" => "bar, kPa or psi",
        "kg" => "kg or lb",
        "°" => "° or deg",
        "" => "a number alone",
        _ => of,
    };
}
