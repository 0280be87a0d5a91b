using System.Globalization;
using System.Text.RegularExpressions;

namespace ScaleLink.Weighing.Cars.Interview;

/// <summary>
/// What was typed for a number: the number, perhaps a unit, perhaps +- and an expanded uncertainty (95 %, k = 1.96), perhaps its unit or a percent sign.
/// </summary>
/// <param name="Value">In the unit of the car file; absent when it was not understood.</param>
/// <param name="Kept">The same answer with its units, as it is kept: it means the same on a terminal with others.</param>
/// <param name="Reason">Why it was not understood.</param>
internal sealed partial record CarAnswer(Stated? Value, string Kept, string Reason)
{
    private const int Digits = 4;

    /// <summary>Reads an answer that is not empty.</summary>
    public static CarAnswer Read(string typed, CarQuestion question, Units units)
    {
        if (Pattern().Match(typed) is not { Success: true } parts)
            return Not($"\"{PlainText.Clean(typed, 40)}\" is no number such as 70 or 70 +-3, with a point for decimals.");
        var given = parts.Groups["unit"].Value;
        if (Factor(given, question, units) is not { } factor)
            return Not($"{PlainText.Clean(given, 20)} is no unit of this: {Units(question)}.");
        var value = Number(parts, "value") * factor;
        var spread = parts.Groups["spread"].Value;
        var isShare = spread == "%" && question.Kind != AnswerKind.Percent;
        if (!isShare && Factor(spread.Length > 0 ? spread : given, question, units) is null)
            return Not($"{PlainText.Clean(spread, 20)} is no unit of this: {Units(question)}.");
        var u = !parts.Groups["u"].Success ? question.UsualMm > 0 ? question.UsualMm : question.UsualShare * Math.Abs(value)
            : Number(parts, "u") * (isShare ? Math.Abs(value) / 100 : Factor(spread.Length > 0 ? spread : given, question, units)!.Value) / Coverage.Factor();
        return double.IsFinite(value) && double.IsFinite(u) ? new(new(value, Rounded(u)), Keep(parts, question, units), "") : Not("That is too large a number.");
    }

    private static CarAnswer Not(string reason) => new(null, "", reason);

    private static string Keep(Match parts, CarQuestion question, Units units)
    {
        var unit = parts.Groups["unit"].Value is { Length: > 0 } given ? given : question.Unit(units)?.Sign ?? "";
        return $"{parts.Groups["value"].Value} {unit}{(parts.Groups["u"].Success ? $" +-{parts.Groups["u"].Value} {(parts.Groups["spread"].Value is { Length: > 0 } spread ? spread : unit)}" : "")}".TrimEnd();
    }

    private static double? Factor(string sign, CarQuestion question, Units units) => sign.Length == 0 ? question.Unit(units)?.Factor ?? 1
        : Base(question) is { } of ? WrittenUnit.Factor(of, sign) : null;

    private static string Units(CarQuestion question) => WrittenUnit.Known(Base(question) ?? "");

    private static string? Base(CarQuestion question) => question.Kind switch
    {
        AnswerKind.Length => "mm",
        AnswerKind.Rate => "N/mm",
        AnswerKind.Percent => "%",
        _ => null,
    };

    private static double Number(Match parts, string name) => double.Parse(parts.Groups[name].Value, CultureInfo.InvariantCulture);

    // 5 / 1.96 has no end; nobody's uncertainty is known to more.
    private static double Rounded(double u) => u == 0 || !double.IsFinite(u) ? u : double.Parse(u.ToString($"G{Digits}", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^(?<value>[+-]?\d+(\.\d+)?)\s*(?<unit>[A-Za-z/]+|%)?(\s*(\+-|±|\+/-)\s*(?<u>\d+(\.\d+)?)\s*(?<spread>[A-Za-z/]+|%)?)?$")]
    private static partial Regex Pattern();
}
