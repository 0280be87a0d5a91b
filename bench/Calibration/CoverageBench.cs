using ScaleLink.Weighing.Calibration.Masses;
using Weighing.Tests.Calibration.Coverage;

namespace ScaleLink.Bench.Calibration;

/// <summary>The long form of the coverage study, as a table.</summary>
static class CoverageBench
{
    const int UsualTrials = 2000, UsualSeed = 7_041;

    /// <summary>
    /// Prints the table; 0 when every target holds, 1 otherwise. Arguments: calibrations a scenario, seed; both optional.
    /// </summary>
    public static int Run(string[] args)
    {
        var trials = args.Length > 0 ? int.Parse(args[0]) : UsualTrials;
        var seed = args.Length > 1 ? int.Parse(args[1]) : UsualSeed;
        var study = new CoverageStudy(trials, seed);
        (IReadOnlyList<CoverageFigure> Figures, double Low, double High)[] all =
        [
            (study.Noise(0), 0.93, 0.97),
            (study.FaintBow(0.01), 0.93, 1),
            (study.FaintBow(0.02), 0.93, 1),
            (study.FaintBow(0.03), 0.93, 1),
            (study.FaintBow(0.05), 0.93, 1),
            (study.Noise(0.3), 0.93, 0.97),
            (study.Substituted(), 0.93, 1),
            (study.Full(WeightClass.M1, together: true), 0.93, 1),
            (study.Full(WeightClass.M1, together: false), 0.93, 1),
            (study.Full(WeightClass.M3, together: true), 0.93, 1),
            (study.Full(WeightClass.M3, together: false), 0.93, 1),
            (study.FullWithPlates(together: true), 0.93, 1),
            (study.FullWithPlates(together: false), 0.93, 1),
        ];

        Console.WriteLine($"{trials} calibrations a scenario, seed {seed}; share of 95 % intervals that hold the truth");
        Console.WriteLine($"{"scenario",-42} {"load",6} {"covered",8} {"median ± kg",12} {"refused",8}  target");
        var missed = 0;
        foreach (var (figures, low, high) in all)
            foreach (var f in figures)
            {
                var holds = f.Covered >= low && f.Covered <= high;
                missed += holds ? 0 : 1;
                Console.WriteLine($"{f.Scenario,-42} {f.ShareOfCapacity,6:P0} {f.Covered,8:P1} {f.MedianHalfWidthKg,12:F4} {f.Refused,8:P2}  {low:P0}..{high:P0} {(holds ? "holds" : "MISSED")}");
            }
        return missed == 0 ? 0 : 1;
    }
}
