using System.Globalization;
using Weighing.Tests.Settling.Scenarios;

namespace ScaleLink.Bench.Settling;

/// <summary>The long form of the settling tests: how fast, how honest, against fixed averages on the same records.</summary>
static class SettlingBench
{
    const string DefaultTrials = "300";
    const string DefaultSeed = "9001";

    /// <param name="args">Records a scenario, seed, and one of speed, stability, cross-weight, pipeline, cost; each may be left out from the right.</param>
    public static int Run(string[] args)
    {
        var part = args.ElementAtOrDefault(2);
        if (!Number(args.ElementAtOrDefault(0) ?? DefaultTrials, out var trials) || trials < 10
            || !Number(args.ElementAtOrDefault(1) ?? DefaultSeed, out var seed)
            || part is not (null or "speed" or "stability" or "cross-weight" or "pipeline" or "cost"))
        {
            Console.Error.WriteLine("Usage: settling [records, 10 or more] [seed] [speed | stability | cross-weight | pipeline | cost]");
            return 2;
        }
        Console.WriteLine($"{trials} records a scenario, seed {seed}; seconds after the release, median / 95th percentile.");
        if (part is null or "speed")
            foreach (var scenario in new[] { Scenario.Linear, Scenario.Workshop, Scenario.Friction })
                SpeedReport.Print(scenario, seed, trials);
        if (part is null or "stability") StabilityReport.Print(seed, trials);
        if (part is null or "cross-weight") CrossWeightReport.Print(seed, trials);
        if (part is null or "cost") CostReport.Print(seed);
        if (part is null or "pipeline") PipelineReport.Print(seed, trials);
        return 0;
    }

    static bool Number(string text, out int number) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out number);
}
