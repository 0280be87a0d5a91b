using System.Globalization;

namespace ScaleLink.Board.Readings;

/// <summary>What ride heights, pad heights and shims are shown in. Inside everything stays in millimetres.</summary>
/// <param name="Name">Its sign.</param>
/// <param name="Millimetres">One of it in millimetres, exact.</param>
/// <param name="Decimals">Decimals that come nearest to a tenth of a millimetre.</param>
public sealed record LengthUnit(string Name, double Millimetres, int Decimals)
{
    /// <summary>Millimetre.</summary>
    public static LengthUnit Millimetre { get; } = new("mm", 1, 1);

    /// <summary>Inch, exact by definition (NIST Special Publication 811:2008, appendix B.8).</summary>
    public static LengthUnit Inch { get; } = new("in", 25.4, 3);

    /// <summary>The unit of that name; millimetres for a name that is not known.</summary>
    public static LengthUnit Named(string? name) => name == Inch.Name ? Inch : Millimetre;

    /// <summary>A length with its sign where it is negative, or always; <paramref name="finer"/> adds decimals where a tenth of a millimetre is too coarse.</summary>
    public string Show(double millimetres, bool isSigned = false, int finer = 0)
    {
        var text = Math.Abs(millimetres / Millimetres).ToString($"F{Decimals + finer}", CultureInfo.InvariantCulture);
        var isZero = text.All(c => c is '0' or '.');
        return (isZero ? "" : millimetres < 0 ? "\u2212" : isSigned ? "+" : "") + text;
    }
}
