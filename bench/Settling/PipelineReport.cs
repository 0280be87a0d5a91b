using Daemon.Tests.Settling.Trials;
using Weighing.Tests.Settling.Scenarios;

namespace ScaleLink.Bench.Settling;

/// <summary>The settling figures once more, on the simulator's cars and through the daemon's pipeline from bytes to readings; times are when a reading comes out.</summary>
static class PipelineReport
{
    static readonly (double From, double To)[] Ages = [(0, .5), (.5, 1), (1, 1.5), (1.5, 2), (2, 3), (3, 5), (5, 20)];

    public static void Print(int seed, int trials)
    {
        foreach (var kind in new[] { RockingKind.Linear, RockingKind.Workshop, RockingKind.WithFriction, RockingKind.HardRocking })
        {
            var runs = Each(trials, number => PipelineTrial.Run(kind, seed, number));
            Console.WriteLine($"\n== pipeline, {kind.Name}");
            // Later steps move the car again, so in the workshop the value has to hold for three seconds only.
            var hold = kind.WalkedPast ? 3 : 20;
            if (!kind.Thrown)
            {
                Ratio("all four within 0.1 kg: 1 s average, pipeline, ratio", [.. runs.Select(r => r.TimeWithin(r.AverageError, .1, hold))], [.. runs.Select(r => r.TimeWithin(r.Error, .1, hold))]);
                Claims(runs);
            }

            foreach (var band in new[] { .05, .1, .2 })
                Ratio($"cross weight within {band:0.00} %: 1 s average, pipeline, ratio", [.. runs.Select(r => r.TimeWithin(r.RatioAverageError, band))], [.. runs.Select(r => r.TimeWithin(r.CrossWeightError, band))]);
            if (!kind.Thrown)
                Ratio("cross weight error at -0.2 s, percent: average, pipeline, ratio", [.. runs.Select(r => r.RatioAverageError(At(r, -.2)))], [.. runs.Select(r => r.CrossWeightError(At(r, -.2)))]);
            foreach (var (from, to) in Ages)
                Console.WriteLine($"   covered {from,4:0.0}-{to,-4:0.0} s: loads {Share([.. runs.Select(r => r.Covered(from, to))])}  cross weight {Share([.. runs.Select(r => r.CrossWeightCovered(from, to))])}");
        }

        var late = Each(trials, number => PipelineTrial.Lean(RockingKind.Linear, seed, number)).OfType<double>().ToArray();
        Console.WriteLine($"\n== pipeline, a hand on the body, arriving at 600 N/s: {late.Length} of {trials} settled before; "
            + $"retracted after median {At(late, .5):0.000} s, 95 % {At(late, .95):0.000} s, longest {late.Max():0.000} s");
    }

    static void Claims(PipelineTrial[] runs)
    {
        var claims = runs.SelectMany(r => r.Claims().Select(k => r.Error(k))).ToArray();
        var first = runs.Select(r => r.Claims().Select(k => r.Times[k]).FirstOrDefault(20)).ToArray();
        Console.WriteLine($"   settled: first claim {At(first, .5):0.00} / {At(first, .95):0.00} s; claims {claims.Length}, false {claims.Count(e => e > .1)}, worst {claims.Max():0.000} kg; "
            + $"records with a claim in the first 0.5 s {runs.Count(r => r.ClaimsWithin(0, .5))}");
    }

    static void Ratio(string name, double[] average, double[] ours) =>
        Console.WriteLine($"   {name,-66} {At(average, .5),6:0.00} / {At(average, .95),6:0.00}   {At(ours, .5),6:0.00} / {At(ours, .95),6:0.00}   "
            + $"{At(ours, .5) / At(average, .5):0.00} / {At(ours, .95) / At(average, .95):0.00}");

    static int At(PipelineTrial run, double time) => Array.FindIndex(run.Times, t => t >= time);

    static double At(double[] values, double part) => HoldTime.Percentile(values, part);

    static string Share((int Covered, int Stated)[] counts) =>
        counts.Sum(c => c.Stated) is > 0 and var stated ? $"{100.0 * counts.Sum(c => c.Covered) / stated,5:0.0} %" : "    -  ";

    static T[] Each<T>(int count, Func<int, T> trial) => [.. Enumerable.Range(0, count).AsParallel().AsOrdered().Select(trial)];
}
