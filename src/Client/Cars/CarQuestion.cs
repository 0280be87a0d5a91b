using ScaleLink.Client.Runtime;
using ScaleLink.Measure;
using ScaleLink.Weighing.Cars;

namespace ScaleLink.Client.Cars;

/// <summary>What kind of answer a question wants, and with it the units that it can come in.</summary>
internal enum AnswerKind
{
    /// <summary>Words.</summary>
    Text,
    /// <summary>Millimetres, centimetres, metres or inches.</summary>
    Length,
    /// <summary>N/mm or lb/in.</summary>
    Rate,
    /// <summary>A number of no unit, or of turns.</summary>
    Number,
    /// <summary>Percent.</summary>
    Percent,
}

/// <summary>A question about a car.</summary>
/// <param name="Key">By which its answer is kept; stays the same from version to version.</param>
/// <param name="Words">Without the unit.</param>
/// <param name="Kind">Of the answer.</param>
/// <param name="UsualShare">Standard uncertainty where none is stated, as a share of the value.</param>
/// <param name="UsualMm">The same in millimetres; 0: the share holds.</param>
/// <param name="Otherwise">What stands in for an empty answer; absent: there has to be one.</param>
internal sealed record CarQuestion(string Key, string Words, AnswerKind Kind, double UsualShare = 0, double UsualMm = 0, Stated? Otherwise = null)
{
    /// <summary>The unit of an answer that names none; nothing for one without.</summary>
    public Unit? Unit(Units units) => Kind switch
    {
        AnswerKind.Length => units.Length,
        AnswerKind.Rate => units.Rate,
        AnswerKind.Percent => Measure.Unit.Percent,
        _ => null,
    };

    /// <summary>As it stands on the screen, with unit and with what an empty answer means.</summary>
    /// <param name="glyphs">Of the terminal.</param>
    /// <param name="before">What was answered already; empty: nothing.</param>
    public string Line(Glyphs glyphs, string before)
    {
        var unit = Unit(glyphs.Units);
        var otherwise = before.Length > 0 ? $" (Enter: {before}, as answered)" : Otherwise is not { } o ? "" : o.Assumed
            ? $" (Enter: a guess, {Text(o.Estimate, unit)} {glyphs.PlusMinus}{Text(o.StandardUncertainty * Coverage.Factor(), unit)})"
            : $" (Enter: {Text(o.Estimate, unit)})";
        return $"{Words}{(unit is null ? "" : $", {unit.Sign}")}{otherwise}";
    }

    private static string Text(double value, Unit? unit) => (value / (unit?.Factor ?? 1)).ToString("G3", System.Globalization.CultureInfo.InvariantCulture);
}
