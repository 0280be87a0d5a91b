namespace Weighing.Tests.Settling.Scenarios;

/// <summary>When an error comes within a band and stays there.</summary>
static class HoldTime
{
    /// <param name="error">Error at each block.</param>
    /// <param name="band">Allowed error.</param>
    /// <param name="hold">Seconds for which it must stay, or until the record ends.</param>
    /// <returns>Seconds after the release; the record's end when it never stays.</returns>
    public static double Of(Func<int, double> error, double band, double hold = 100)
    {
        var blocks = Motion.Samples / 4;
        var need = hold / .05;
        int? since = null;
        for (var k = 0; k < blocks; k++)
        {
            if (RockingRecord.Time(k) < 0) continue;
            since = error(k) <= band ? since ?? k : null;
            if (since is { } start && k - start >= need) return RockingRecord.Time(start);
        }
        return since is { } first ? RockingRecord.Time(first) : Motion.End;
    }

    /// <summary>The value below which the share <paramref name="p"/> of the values lies, linear between them.</summary>
    public static double Percentile(IEnumerable<double> values, double p)
    {
        var sorted = values.Order().ToArray();
        var at = p * (sorted.Length - 1);
        var i = Math.Min((int)at, sorted.Length - 2);
        return sorted[i] + (at - i) * (sorted[i + 1] - sorted[i]);
    }
}
