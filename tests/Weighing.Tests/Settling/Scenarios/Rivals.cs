using ScaleLink.Measure;

namespace Weighing.Tests.Settling.Scenarios;

/// <summary>Fixed averages that any indicator could use, for comparison on the same records.</summary>
static class Rivals
{
    /// <summary>Moving average of one second.</summary>
    public static Corners[] OneSecond(RockingRecord record) => Boxcar(record.Blocks, 20);

    /// <summary>Averages of 0.8, 0.6 and 0.4 s, one after the other.</summary>
    public static Corners[] Cascade(RockingRecord record) => Boxcar(Boxcar(Boxcar(record.Blocks, 16), 12), 8);

    public static double TimeWithin(RockingRecord record, Corners[] estimates, double band, double hold = 100) =>
        HoldTime.Of(k => SettlingTrial.Worst(estimates[k], record.Truth[k]), band, hold);

    static Corners[] Boxcar(Corners[] blocks, int length)
    {
        var averages = new Corners[blocks.Length];
        for (var k = 0; k < blocks.Length; k++)
        {
            var sum = default(Corners);
            var from = Math.Max(0, k - length + 1);
            for (var i = from; i <= k; i++) sum += blocks[i];
            averages[k] = 1.0 / (k - from + 1) * sum;
        }
        return averages;
    }
}
