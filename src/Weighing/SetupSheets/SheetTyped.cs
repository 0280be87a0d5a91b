using System.Globalization;
using System.Text.RegularExpressions;

namespace ScaleLink.Weighing.SetupSheets;

/// <summary>Reads a value that somebody typed, perhaps with a unit behind it.</summary>
static partial class SheetTyped
{
    const int LongestText = 200;

    /// <summary>The value, in the base unit of its field.</summary>
    /// <param name="slot">Where it belongs; its field is known.</param>
    /// <param name="typed">As typed.</param>
    /// <param name="units">Of a number without a unit.</param>
    /// <exception cref="DiagnosticException">SL-613.</exception>
    public static SheetValue Read(SheetSlot slot, string typed, Units units)
    {
        var field = slot.Field!;
        return field.Unit is { } unit ? SheetValue.Of(Number(slot, field, typed.Trim(), unit, units)) : SheetValue.Of(Text(slot, typed));
    }

    /// <summary>A number that is in the range of its field.</summary>
    /// <exception cref="DiagnosticException">SL-613.</exception>
    public static double InRange(SheetSlot slot, double number)
    {
        var field = slot.Field!;
        if (number >= field.Low && number <= field.High)
            return number;
        var sign = field.Unit!.Sign;
        throw sign == "mm" ? Wrong(slot, $"{slot.Words} is {Mm(number):0.##}.", $"Expected {Mm(field.Low):0.##} to {Mm(field.High):0.##}: check the number and its unit.")
            : sign == "kg" ? Wrong(slot, $"{slot.Words} is {Kg(number):0.##}.", $"Expected {Kg(field.Low):0.##} to {Kg(field.High):0.##}: check the number and its unit.")
            : Wrong(slot, $"{slot.Words} is {Plain(number)} {sign}.", $"Expected {Plain(field.Low)} to {Plain(field.High)} {sign}: check the number and its unit.");
    }

    static string Text(SheetSlot slot, string typed) => PlainText.IsClean(typed, LongestText) ? typed.Trim()
        : throw Wrong(slot, $"{slot.Words} is longer than {LongestText} signs or has some that do not show.", "Type it anew, shorter, in letters, digits and signs that show.");

    static double Number(SheetSlot slot, SheetField field, string typed, SheetUnit unit, Units units)
    {
        var shown = PlainText.Clean(typed, 40);
        if (Pattern().Match(typed) is not { Success: true } parts)
            throw Wrong(slot, $"\"{shown}\" is no number for {slot.Words}.", typed.Contains(',', StringComparison.Ordinal) ? $"Write a point for decimals, and none between thousands: {shown.Replace(',', '.')}." : "Write a number such as 70 or 2.5, and its unit behind it where it is another.");
        var number = double.Parse(parts.Groups["value"].Value, CultureInfo.InvariantCulture);
        var written = parts.Groups["unit"].Value;
        if (unit == SheetUnit.Temperature && string.Equals(written.TrimStart('°'), "F", StringComparison.OrdinalIgnoreCase))
            return InRange(slot, (number - 32) / 1.8);
        var factor = written.Length == 0 ? units.For(unit.Sign).Factor
            : WrittenUnit.Factor(unit.Sign, written) ?? throw Wrong(slot, $"{PlainText.Clean(written, 20)} is no unit of {field.Words}.", $"Write {WrittenUnit.Known(unit.Sign)}.");
        return InRange(slot, number * factor);
    }

    static string Plain(double number) => number.ToString("0.##", CultureInfo.InvariantCulture);

    static DiagnosticException Wrong(SheetSlot slot, Sentence message, Sentence remedy) => new(new Diagnostic(SheetCodes.Value, message, remedy) { Where = slot.ToString() });

    [GeneratedRegex(@"^(?<value>[+-]?\d{1,7}(\.\d{1,9})?)\s*(?<unit>[A-Za-z/°%""]+)?$")]
    private static partial Regex Pattern();
}
