using ScaleLink.Weighing.Settling;
using Weighing.Tests.Settling.Scenarios;

namespace ScaleLink.Bench.Settling;

/// <summary>Time to the right value, claims, and coverage of the stated intervals in one scenario.</summary>
static class SpeedReport
{
    static readonly (double From, double To)[] Ages = [(0, .5), (.5, 1), (1, 1.5), (1.5, 2), (2, 3), (3, 5), (5, 20)];

    public static void Print(Scenario scenario, int seed, int trials)
    {
        // Later slips move the truth, so in the workshop the value has to hold for three seconds only.
        var hold = scenario == Scenario.Workshop ? 3 : 100;
        var runs = scenario.Each(seed, trials, record => new Outcome(
            new(record),
            Rivals.TimeWithin(record, Rivals.OneSecond(record), .1, hold),
            Rivals.TimeWithin(record, Rivals.Cascade(record), .1, hold),
            Rivals.TimeWithin(record, Rivals.OneSecond(record), .25, hold),
            Rivals.TimeWithin(record, Rivals.Cascade(record), .25, hold)));
        Console.WriteLine($"\n== {scenario.Name}");
        Line("all four within 0.1 kg   moving average 1 s", runs.Select(r => r.Average));
        Line("                         cascade .8+.6+.4 s", runs.Select(r => r.Cascade));
        Line("                         estimator", runs.Select(r => r.Trial.TimeWithin(.1, hold)));
        Line("all four within 0.25 kg  moving average 1 s", runs.Select(r => r.AverageQuarter));
        Line("                         cascade .8+.6+.4 s", runs.Select(r => r.CascadeQuarter));
        Line("                         estimator", runs.Select(r => r.Trial.TimeWithin(.25, hold)));
        PrintClaims(scenario, seed, trials, .1, [.. runs.Select(r => r.Trial)]);
        PrintClaims(scenario, seed, trials, .25, null);
        PrintRest([.. runs.Select(r => r.Trial)]);
        PrintCoverage([.. runs.Select(r => r.Trial)]);
    }

    static void PrintClaims(Scenario scenario, int seed, int trials, double tolerance, SettlingTrial[]? done)
    {
        var runs = done ?? scenario.Each(seed, trials, record => new SettlingTrial(record, tolerance));
        var claims = runs.SelectMany(run => run.Claims().Select(k => (run, k))).ToArray();
        var wrong = claims.Where(c => c.run.Error(c.k) > tolerance).ToArray();
        var unslipped = wrong.Count(c => !c.run.Record.SlippedWithinASecond(RockingRecord.Time(c.k)));
        Line($"settled, {tolerance:0.00} kg: first claim", runs.Select(r => RockingRecord.Time(r.Claims().FirstOrDefault(559))));
        Console.WriteLine($"   claims {claims.Length}, false {wrong.Length} ({100.0 * wrong.Length / claims.Length:0.00} %), "
            + $"of them without a slip in the last second {unslipped}; worst {(wrong.Length > 0 ? wrong.Max(c => c.run.Error(c.k)) : 0):0.000} kg");
    }

    /// <summary>While the car is called settled: how often a pad is off by more than the tolerance.</summary>
    static void PrintRest(SettlingTrial[] runs)
    {
        int rest = 0, off = 0;
        foreach (var run in runs)
            for (var k = 0; k < run.Readings.Length; k++)
            {
                if (RockingRecord.Time(k) < 0 || run.Readings[k].Verdict != SettlingVerdict.Settled) continue;
                rest++;
                if (run.Error(k) > .1) off++;
            }
        Console.WriteLine($"   while settled (0.1 kg) a pad is off by more in {100.0 * off / rest:0.00} % of blocks");
    }

    static void PrintCoverage(SettlingTrial[] runs)
    {
        var early = runs.Count(run => run.ClaimsWithin(0, .5));
        Console.WriteLine($"   records with a claim in the first 0.5 s: {early}");
        Console.WriteLine("   age s      covered %  without a slip %  claimed %  median U kg");
        foreach (var (from, to) in Ages)
        {
            int covered = 0, stated = 0, calm = 0, calmStated = 0, blocks = 0;
            var wide = new List<double>();
            foreach (var run in runs)
                for (var k = 0; k < run.Readings.Length; k++)
                {
                    var t = RockingRecord.Time(k);
                    if (t < from || t >= to) continue;
                    blocks++;
                    var (c, s) = run.Covered(k);
                    (covered, stated) = (covered + c, stated + s);
                    if (!run.Record.SlippedWithinASecond(t)) (calm, calmStated) = (calm + c, calmStated + s);
                    if (run.Readings[k].StandardUncertainty is { } u) wide.Add(2 * u.LF);
                }
            Console.WriteLine($"   {from,4:0.0}-{to,-4:0.0} {100.0 * covered / stated,10:0.0} {100.0 * calm / calmStated,16:0.0} "
                + $"{100.0 * stated / 4 / blocks,10:0.0} {(wide.Count > 1 ? HoldTime.Percentile(wide, .5) : 0),10:0.000}");
        }
    }

    static void Line(string name, IEnumerable<double> seconds)
    {
        var all = seconds.ToArray();
        Console.WriteLine($"   {name,-46} {HoldTime.Percentile(all, .5),6:0.00} / {HoldTime.Percentile(all, .95),6:0.00}");
    }

    sealed record Outcome(SettlingTrial Trial, double Average, double Cascade, double AverageQuarter, double CascadeQuarter);
}
