namespace ScaleLink.Client.Demo;

/// <summary>A settled cross weight in percent, U for 95 % of what may differ between two readings, and the move made before it.</summary>
internal readonly record struct PerchReading(double CrossWeightPercent, double RepeatabilityPercent, PerchMove Before);

/// <summary>Eighths of a turn for either diagonal pair of perches, positive up.</summary>
internal readonly record struct PerchMove(int RightFrontPair, int LeftFrontPair)
{
    /// <summary>What counts for cross weight: RF and LR up does as much as LF and RR down.</summary>
    public int Effect => RightFrontPair - LeftFrontPair;
}

/// <summary>
/// How a careful hand without data of the car finds the perch turns: a modest first turn, then as much as the effect measured
/// so far asks for. One pair goes up as the other goes down, so that every axle keeps its height; an odd eighth goes to the
/// pair that has been turned less. Common practice, no published source.
/// </summary>
internal static class PerchRule
{
    private const int First = 4;
    private const int Most = 16;

    /// <summary>What to turn next, and the cross weight that this should give where an effect has been measured.</summary>
    /// <param name="readings">All readings so far, the newest last; at least one.</param>
    /// <param name="targetPercent">Cross weight aimed for.</param>
    public static (PerchMove Move, double? PredictedPercent) Next(IReadOnlyList<PerchReading> readings, double targetPercent)
    {
        var newest = readings[^1];
        var missing = targetPercent - newest.CrossWeightPercent;
        if (Measured(readings) is not { } perEighth)
            return (Share(Math.Sign(missing) * Larger(readings), readings), null);
        var eighths = (int)Math.Clamp(Math.Round(missing / perEighth), -Most, Most);
        if (eighths == 0)
            eighths = Math.Sign(missing);
        return (Share(eighths, readings), newest.CrossWeightPercent + eighths * perEighth);
    }

    /// <summary>
    /// Percent an eighth by least squares over all moves so far, so that large moves count most: friction leaves a little of its
    /// own in every reading. Nothing while it does not stand clear of that, or points the wrong way.
    /// </summary>
    private static double? Measured(IReadOnlyList<PerchReading> readings)
    {
        double products = 0, squares = 0, variance = 0;
        for (var i = 1; i < readings.Count; i++)
        {
            double effect = readings[i].Before.Effect;
            products += effect * (readings[i].CrossWeightPercent - readings[i - 1].CrossWeightPercent);
            squares += effect * effect;
            variance += effect * effect * (Square(readings[i].RepeatabilityPercent) + Square(readings[i - 1].RepeatabilityPercent));
        }

        return squares > 0 && products > Math.Sqrt(variance) ? products / squares : null;
    }

    private static double Square(double x) => x * x;

    // Where a move showed nothing, the next one is twice as large.
    private static int Larger(IReadOnlyList<PerchReading> readings) =>
        Math.Min(Most, readings.Select(r => 2 * Math.Abs(r.Before.Effect)).Append(First).Max());

    private static PerchMove Share(int eighths, IReadOnlyList<PerchReading> readings)
    {
        var half = eighths / 2;
        var odd = eighths - 2 * half;
        var height = readings.Sum(r => r.Before.RightFrontPair + r.Before.LeftFrontPair);
        // An odd eighth lifts or lowers the car a little: the next one takes that back.
        return Math.Abs(height + odd) <= Math.Abs(height - odd) ? new PerchMove(half + odd, -half) : new PerchMove(half, -half - odd);
    }
}
