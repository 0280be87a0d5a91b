using System.Globalization;

namespace ScaleLink.Weighing.Cars.Interview;

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

    /// <summary>Why an empty answer is refused; nothing: it is taken for <see cref="Otherwise"/>.</summary>
    public string Lacking => Otherwise is not null ? "" : Kind == AnswerKind.Text ? "A name is needed here, so that records can be told apart." : "A number is needed here, such as 2450, 2450 +-3 or 96.5 in.";

    /// <summary>What an empty answer means, in the unit of an answer that names none, with its interval of 95 % where it is a guess: "60 ±49". Empty: there has to be an answer.</summary>
    public string OtherwiseText(Units units)
    {
        if (Otherwise is not { } o)
            return "";
        var unit = Unit(units);
        return o.Assumed ? $"{Text(o.Estimate, unit)} \u00b1{Text(o.StandardUncertainty * Coverage.Factor(), unit)}" : Text(o.Estimate, unit);
    }

    private static string Text(double value, Unit? unit) => (value / (unit?.Factor ?? 1)).ToString("G3", CultureInfo.InvariantCulture);
}
