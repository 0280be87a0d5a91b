using System.Text;
using ScaleLink.Api.V1;

namespace ScaleLink.Client.Runtime;

/// <summary>Every sign on the screen that is not plain text, in two sets: terminals differ in what they can show.</summary>
internal sealed record Glyphs
{
    private const string Fractions = "⅛¼⅜½⅝¾⅞";
    private static readonly string[] PlainFractions = ["1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"];

    public required bool IsRich { get; init; }
    public required string PlusMinus { get; init; }
    /// <summary>Marks RF and LR.</summary>
    public required char RightFrontPair { get; init; }
    /// <summary>Marks LF and RR.</summary>
    public required char LeftFrontPair { get; init; }
    public required char Rule { get; init; }
    public required char Upright { get; init; }
    public required char Pivot { get; init; }
    public required char Hand { get; init; }
    public required char ToleranceBar { get; init; }
    public required char NotchLeft { get; init; }
    public required char NotchRight { get; init; }
    public required char Tick { get; init; }
    public required char Step { get; init; }
    public required char Predicted { get; init; }
    public required char Settled { get; init; }
    public required char Moving { get; init; }
    public required char High { get; init; }
    public required char Low { get; init; }
    /// <summary>Something lies to the left of what is shown.</summary>
    public required char BeyondLeft { get; init; }
    /// <summary>Something lies to the right of what is shown.</summary>
    public required char BeyondRight { get; init; }
    public required char Solid { get; init; }
    public required char Medium { get; init; }
    public required char Faint { get; init; }
    /// <summary>What loads and lengths are shown in on this terminal.</summary>
    public Measure.Units Units { get; init; } = Measure.Units.Metric;

    public static Glyphs Rich { get; } = new()
    {
        IsRich = true, PlusMinus = "±", RightFrontPair = '◆', LeftFrontPair = '○', Rule = '─', Upright = '│', Pivot = '▲', Hand = '▲',
        ToleranceBar = '═', NotchLeft = '╡', NotchRight = '╞', Tick = '┼', Step = '■', Predicted = '□', Settled = '■', Moving = '≈',
        High = '▲', Low = '▼', BeyondLeft = '◀', BeyondRight = '▶', Solid = '█', Medium = '▒', Faint = '░',
    };

    public static Glyphs Plain { get; } = new()
    {
        IsRich = false, PlusMinus = "+-", RightFrontPair = '#', LeftFrontPair = 'o', Rule = '-', Upright = '|', Pivot = '^', Hand = '^',
        ToleranceBar = '=', NotchLeft = '[', NotchRight = ']', Tick = '+', Step = '*', Predicted = '.', Settled = '*', Moving = '~',
        High = '^', Low = 'v', BeyondLeft = '<', BeyondRight = '>', Solid = '#', Medium = '+', Faint = ':',
    };

    /// <summary>Text of the daemon as this terminal can show it: "1¼ ± 0.1" becomes "1 1/4 +- 0.1" where there are no such signs.</summary>
    public string Say(string text)
    {
        if (IsRich)
            return text;
        var plain = new StringBuilder();
        foreach (var sign in text)
            _ = Fractions.IndexOf(sign, StringComparison.Ordinal) switch
            {
                >= 0 and var i => plain.Append(plain.Length > 0 && char.IsAsciiDigit(plain[^1]) ? " " : "").Append(PlainFractions[i]),
                _ when sign == '±' => plain.Append(PlusMinus),
                _ when sign == '\u2212' => plain.Append('-'),
                _ => plain.Append(sign),
            };
        return plain.ToString();
    }

    public char Pair(Corner corner) => corner.IsOfCrossWeight() ? RightFrontPair : LeftFrontPair;
}
