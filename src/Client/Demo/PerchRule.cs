namespace ScaleLink.Client.Demo;

/// <summary>A settled cross weight in percent, its U for 95 %, and the turns made before it since the reading before.</summary>
internal readonly record struct PerchReading(double CrossWeightPercent, double ExpandedPercent, double TurnsBefore);

/// <summary>What to do next: turns of every perch (positive raises RF and LR and lowers LF and RR), and what that should give.</summary>
internal readonly record struct PerchMove(double Turns, double? PredictedPercent);

/// <summary>
/// How a careful hand without data of the car finds the perch turns: a modest first turn, then as much as the last measured
/// effect asks for, in eighths of a turn. Common practice, no published source.
/// </summary>
internal static class PerchRule
{
    /// <summary>The least that a hand turns, and the step of all turns.</summary>
    public const double Least = 0.125;
    private const double First = 0.25;
    private const double Most = 1;

    /// <param name="readings">All readings so far, the newest last; at least one.</param>
    /// <param name="targetPercent">Cross weight aimed for.</param>
    public static PerchMove Next(IReadOnlyList<PerchReading> readings, double targetPercent)
    {
        var newest = readings[^1];
        var missing = targetPercent - newest.CrossWeightPercent;
        if (Effect(readings) is not { } perTurn)
            return new PerchMove(Math.CopySign(FirstTurn(readings), missing), null);
        var turns = Math.Clamp(Math.Round(missing / perTurn / Least) * Least, -Most, Most);
        if (turns == 0)
            turns = Math.CopySign(Least, missing);
        return new PerchMove(turns, newest.CrossWeightPercent + turns * perTurn);
    }

    /// <summary>
    /// Percent a turn, from the newest turn whose effect stands clear of both uncertainties. An effect the wrong way round is
    /// friction or a slip, and proves nothing.
    /// </summary>
    private static double? Effect(IReadOnlyList<PerchReading> readings)
    {
        for (var i = readings.Count - 1; i > 0; i--)
        {
            var (now, before) = (readings[i], readings[i - 1]);
            var change = now.CrossWeightPercent - before.CrossWeightPercent;
            var isClear = Math.Abs(change) > now.ExpandedPercent + before.ExpandedPercent;
            if (now.TurnsBefore != 0 && isClear && change / now.TurnsBefore > 0)
                return change / now.TurnsBefore;
        }

        return null;
    }

    // Where a turn showed nothing, the next one is twice as large.
    private static double FirstTurn(IReadOnlyList<PerchReading> readings) =>
        Math.Min(Most, readings.Where(r => r.TurnsBefore != 0).Select(r => 2 * Math.Abs(r.TurnsBefore)).Append(First).Max());
}
