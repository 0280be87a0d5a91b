using ScaleLink.Measure;
using ScaleLink.Weighing.Settling;

namespace Weighing.Tests.Settling.Scenarios;

/// <summary>The estimator's answer to every block of one record.</summary>
sealed class SettlingTrial
{
    const double Coverage = 2;

    public SettlingTrial(RockingRecord record, double tolerance = 0.1)
    {
        Record = record;
        var estimator = new SettlingEstimator(new() { ToleranceKg = tolerance, NoiseKg = record.QuietNoise() });
        Readings = [.. record.Blocks.Select(block => estimator.Add(block))];
    }

    public RockingRecord Record { get; }

    public SettlingReading[] Readings { get; }

    /// <summary>Largest error on any pad, kg.</summary>
    public double Error(int k) => Worst(Readings[k].Loads, Record.Truth[k]);

    public static double Worst(Corners a, Corners b)
    {
        var off = a - b;
        return Math.Max(Math.Max(Math.Abs(off.LF), Math.Abs(off.RF)), Math.Max(Math.Abs(off.LR), Math.Abs(off.RR)));
    }

    /// <summary>Blocks at which the car was newly called settled, after the release.</summary>
    public IEnumerable<int> Claims()
    {
        for (var k = 1; k < Readings.Length; k++)
            if (RockingRecord.Time(k) > 0 && Readings[k].Verdict == SettlingVerdict.Settled
                && Readings[k - 1].Verdict != SettlingVerdict.Settled)
                yield return k;
    }

    /// <summary>True when anything was claimed at an age between the two, s.</summary>
    public bool ClaimsWithin(double from, double to) =>
        Enumerable.Range(0, Readings.Length).Any(k => Readings[k].Claimed && RockingRecord.Time(k) >= from && RockingRecord.Time(k) < to);

    /// <summary>Lengths of the stretches with one verdict, s, the first and the last left out: these were cut by the record.</summary>
    public IEnumerable<(SettlingVerdict Verdict, double Seconds)> Stretches()
    {
        var since = Array.FindIndex(Readings, r => r.Verdict != Readings[0].Verdict);
        for (var k = since + 1; since > 0 && k < Readings.Length; k++)
        {
            if (Readings[k].Verdict == Readings[since].Verdict) continue;
            yield return (Readings[since].Verdict, RockingRecord.Time(k) - RockingRecord.Time(since));
            since = k;
        }
    }

    /// <summary>Pads whose truth lies within twice the stated uncertainty, and pads stated, at block <paramref name="k"/>.</summary>
    public (int Covered, int Stated) Covered(int k)
    {
        if (Readings[k].StandardUncertainty is not { } u) return (0, 0);
        var covered = 0;
        foreach (var corner in Corners.All)
            if (Math.Abs(Readings[k].Loads[corner] - Record.Truth[k][corner]) <= Coverage * u[corner]) covered++;
        return (covered, 4);
    }

    /// <summary>First block after the release from which the error stays within <paramref name="band"/> for good (or for the hold), s.</summary>
    public double TimeWithin(double band, double hold = 100) => HoldTime.Of(Error, band, hold);
}
