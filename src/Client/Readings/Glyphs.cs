using ScaleLink.Api.V1;

namespace ScaleLink.Client.Readings;

/// <summary>Every sign on the screen that is not plain text, in two sets: terminals differ in what they can show.</summary>
internal sealed record Glyphs
{
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
    public required char Solid { get; init; }
    public required char Medium { get; init; }
    public required char Faint { get; init; }

    public static Glyphs Rich { get; } = new()
    {
        IsRich = true, PlusMinus = "±", RightFrontPair = '◆', LeftFrontPair = '○', Rule = '─', Upright = '│', Pivot = '▲', Hand = '▲',
        ToleranceBar = '═', NotchLeft = '╡', NotchRight = '╞', Tick = '┼', Step = '■', Predicted = '□', Settled = '■', Moving = '≈',
        High = '▲', Low = '▼', Solid = '█', Medium = '▒', Faint = '░',
    };

    public static Glyphs Plain { get; } = new()
    {
        IsRich = false, PlusMinus = "+-", RightFrontPair = '#', LeftFrontPair = 'o', Rule = '-', Upright = '|', Pivot = '^', Hand = '^',
        ToleranceBar = '=', NotchLeft = '[', NotchRight = ']', Tick = '+', Step = '*', Predicted = '.', Settled = '*', Moving = '~',
        High = '^', Low = 'v', Solid = '#', Medium = '+', Faint = ':',
    };

    public char Pair(Corner corner) => corner is Corner.Rf or Corner.Lr ? RightFrontPair : LeftFrontPair;
}
