using ScaleLink.Weighing.Settling;
using Weighing.Tests.Settling.Scenarios;

namespace ScaleLink.Bench.Settling;

/// <summary>How fast a disturbance is admitted, whether the verdict keeps still, and what is said of a car that never rests.</summary>
static class StabilityReport
{
    public static void Print(int seed, int trials)
    {
        Hand(Scenario.HandOnWheels, seed, trials);
        Hand(Scenario.HandOnBody, seed, trials);
        foreach (var scenario in new[] { Scenario.Linear, Scenario.Workshop, Scenario.Friction, Scenario.Shaken })
            Verdicts(scenario, seed, trials);
        Endless(seed, trials);
    }

    static void Hand(Scenario scenario, int seed, int trials)
    {
        var runs = scenario.Each(seed, trials, HandOutcome.Of).Where(r => r.WasSettled).ToArray();
        var late = runs.Select(r => r.RetractedAfter).ToArray();
        Console.WriteLine($"\n== {scenario.Name}: {runs.Length} of {trials} settled before; retracted after median {HoldTime.Percentile(late, .5):0.00} s, "
            + $"95 % {HoldTime.Percentile(late, .95):0.00} s, longest {late.Max():0.00} s; while it leans covered {100.0 * runs.Sum(r => r.Covered) / runs.Sum(r => r.Stated):0.0} %");
    }

    static void Verdicts(Scenario scenario, int seed, int trials)
    {
        var runs = scenario.Each(seed, trials, record => new SettlingTrial(record));
        var stretches = runs.SelectMany(r => r.Stretches()).ToArray();
        var rests = runs.Sum(r => r.Readings.Count(x => x.Verdict == SettlingVerdict.Settled)) * SettlingEstimator.BlockSeconds;
        var lost = runs.Sum(r => Enumerable.Range(1, r.Readings.Length - 1).Count(k => RockingRecord.Time(k) > 0
            && r.Readings[k].Verdict == SettlingVerdict.Disturbed && r.Readings[k - 1].Verdict == SettlingVerdict.Settled));
        Console.WriteLine($"\n== {scenario.Name}: verdict changes a record {(double)stretches.Length / trials:0.00}; shortest stretch "
            + string.Join(", ", stretches.GroupBy(s => s.Verdict).OrderBy(g => g.Key).Select(g => $"{g.Key} {g.Min(s => s.Seconds):0.00} s"))
            + $"; settled lost after the release {lost} times in {rests:0} s of rest");
        var ahead = runs.SelectMany(Predictions).ToArray();
        if (ahead.Length > 2)
            Console.WriteLine($"   seconds left: {ahead.Length} statements, error median {HoldTime.Percentile(ahead, .5):0.00} s, "
                + $"95 % {HoldTime.Percentile(ahead, .95):0.00} s");
    }

    /// <summary>Errors of the expected time until settled.</summary>
    static IEnumerable<double> Predictions(SettlingTrial run)
    {
        var first = run.Claims().FirstOrDefault(-1);
        for (var k = 0; k < first; k++)
            if (RockingRecord.Time(k) > 0 && run.Readings[k].SecondsLeft is { } left)
                yield return Math.Abs(RockingRecord.Time(k) + left - RockingRecord.Time(first));
    }

    static void Endless(int seed, int trials)
    {
        int covered = 0, stated = 0, spoken = 0, asked = 0, settled = 0;
        foreach (var run in Scenario.Shaken.Each(seed, trials, record => new SettlingTrial(record)))
            for (var k = 0; k < run.Readings.Length; k++)
            {
                if (RockingRecord.Time(k) < 6) continue;
                asked++;
                if (run.Readings[k].Verdict == SettlingVerdict.Settled) settled++;
                if (!run.Readings[k].Fallback) continue;
                var (c, s) = run.Covered(k);
                (covered, stated, spoken) = (covered + c, stated + s, spoken + 1);
            }
        Console.WriteLine($"   fixed average speaks in {100.0 * spoken / asked:0.0} % of blocks, covers {100.0 * covered / stated:0.0} %; settled {settled}");
    }
}
