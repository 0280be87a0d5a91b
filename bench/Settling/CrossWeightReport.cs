using ScaleLink.Measure;
using ScaleLink.Weighing.Settling.RockingBlind;
using Weighing.Tests.Settling.Scenarios;

namespace ScaleLink.Bench.Settling;

/// <summary>Cross weight of rocking cars: time to a band, error while somebody works on the car, and whether the intervals hold.</summary>
static class CrossWeightReport
{
    static readonly (double From, double To)[] Ages = [(-.2, 0), (0, .5), (.5, 1), (1, 2), (2, 5), (5, 20)];

    public static void Print(int seed, int trials)
    {
        foreach (var scenario in new[] { Scenario.HardRocking, Scenario.NoFriction, Scenario.Friction, Scenario.LightlyDamped })
            Table($"{scenario.Name}, car model known", scenario.Each(seed, trials,
                record => new CrossWeightTrial(record, CrossWeightTrial.TrueModel(record.Motion))));
        foreach (var (name, kind) in new[] { ("hard rocking", SpringCarKind.HardRocking), ("friction", SpringCarKind.WithFriction) })
            Learned(name, kind, seed, trials);
    }

    static void Learned(string name, SpringCarKind kind, int seed, int trials)
    {
        var runs = Enumerable.Range(0, trials).AsParallel().AsOrdered().Select(i =>
        {
            var (next, learner) = Bounces.Of(kind, seed, i, 3);
            var prior = BlindDirection.Unknown(next.Motion.WarpVector!.Value);
            var alone = learner.Learn(prior);
            var joined = alone ?? learner.Join(prior);
            return (Accepted: alone is not null, Known: new CrossWeightTrial(next, CrossWeightTrial.TrueModel(next.Motion)),
                Learned: new CrossWeightTrial(next, joined), RateError: RateError(joined, next.Motion));
        }).ToArray();
        Table($"{name}, the same cars with the model", [.. runs.Select(r => r.Known)]);
        Table($"{name}, learned from three bounces, no model", [.. runs.Select(r => r.Learned)]);
        Rates("all", [.. runs.Select(r => r.RateError)]);
        Rates("accepted without a model", [.. runs.Where(r => r.Accepted).Select(r => r.RateError)]);
    }

    static void Rates(string which, double[] errors)
    {
        if (errors.Length < 2) Console.WriteLine($"   {which}: {errors.Length} cars");
        else
            Console.WriteLine($"   {which}: {errors.Length} cars; largest error of a ride rate ratio, "
                + $"median {100 * HoldTime.Percentile(errors, .5):0.0} %, 95 % {100 * HoldTime.Percentile(errors, .95):0.0} %");
    }

    static double RateError(BlindDirection learned, Motion motion)
    {
        var truth = CrossWeightTrial.TrueModel(motion).RideRateRatios;
        var seen = learned.RideRateRatios;
        return SettlingTrial.Worst(new(seen.LF / truth.LF, seen.RF / truth.RF, seen.LR / truth.LR, seen.RR / truth.RR),
            Corners.Same(1));
    }

    static void Table(string name, CrossWeightTrial[] all)
    {
        var runs = all.Where(run => run.Referred).ToArray();
        Console.WriteLine($"\n== cross weight, {name}: {runs.Length} of {all.Length} with a reference");
        Console.WriteLine("   band %       average 1 s      settled loads    rocking-blind    joined");
        foreach (var band in new[] { .05, .10, .20 })
            Console.WriteLine($"   {band:0.00}   {Times(runs, r => r.AverageError, band)} {Times(runs, r => k => r.Error(r.Settled, k), band)} "
                + $"{Times(runs, r => k => r.Error(r.Blind, k), band)} {Times(runs, r => k => r.Error(r.Joined, k), band)}");
        var before = (int)((-.2 - Motion.Start) / .05);
        Console.WriteLine($"   error at -0.2 s, 95 %: average {Bad(runs, r => r.AverageError(before)):0.000} settled "
            + $"{Bad(runs, r => r.Error(r.Settled, before)):0.000} blind {Bad(runs, r => r.Error(r.Blind, before)):0.000} "
            + $"joined {Bad(runs, r => r.Error(r.Joined, before)):0.000}");
        foreach (var (from, to) in Ages)
            Console.WriteLine($"   covered {from,4:0.0}-{to,-4:0.0} s: settled {Covered(runs, r => r.Settled, from, to)} "
                + $"blind {Covered(runs, r => r.Blind, from, to)} joined {Covered(runs, r => r.Joined, from, to)}");
    }

    static string Times(CrossWeightTrial[] runs, Func<CrossWeightTrial, Func<int, double>> error, double band)
    {
        var times = runs.Select(run => HoldTime.Of(error(run), band)).ToArray();
        return $"{HoldTime.Percentile(times, .5),6:0.00} / {HoldTime.Percentile(times, .95),6:0.00}";
    }

    static double Bad(CrossWeightTrial[] runs, Func<CrossWeightTrial, double> error) => HoldTime.Percentile(runs.Select(error), .95);

    static string Covered(CrossWeightTrial[] runs, Func<CrossWeightTrial, Value?[]> of, double from, double to)
    {
        int yes = 0, no = 0;
        var wide = new List<double>();
        foreach (var run in runs)
            for (var k = 0; k < of(run).Length; k++)
            {
                var t = RockingRecord.Time(k);
                if (t < from || t >= to || run.Covers(of(run), k) is not { } covers) continue;
                wide.Add(2 * of(run)[k]!.Value.StandardUncertainty!.Value);
                if (covers) yes++;
                else no++;
            }
        return wide.Count < 2 ? "     -           " : $"{100.0 * yes / (yes + no),5:0.0} % (U {HoldTime.Percentile(wide, .5):0.000})";
    }
}
