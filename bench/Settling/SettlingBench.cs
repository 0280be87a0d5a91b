using System.Globalization;
using Weighing.Tests.Settling.Scenarios;

namespace ScaleLink.Bench.Settling;

/// <summary>The long form of the settling tests: how fast, how honest, against fixed averages on the same records.</summary>
static class SettlingBench
{
    const int DefaultTrials = 300;
    const int DefaultSeed = 9001;

    public static int Run(string[] args)
    {
        var trials = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : DefaultTrials;
        var seed = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : DefaultSeed;
        Console.WriteLine($"{trials} records a scenario, seed {seed}; seconds after the release, median / 95th percentile.");
        if (args is [_, _, "cross-weight"])
        {
            CrossWeightReport.Print(seed, trials);
            return 0;
        }
        foreach (var scenario in new[] { Scenario.Linear, Scenario.Workshop, Scenario.Friction })
            SpeedReport.Print(scenario, seed, trials);
        StabilityReport.Print(seed, trials);
        CrossWeightReport.Print(seed, trials);
        return 0;
    }
}
