using ScaleLink.Weighing.Calibration;
using ScaleLink.Weighing.Calibration.Masses;

namespace Weighing.Tests.Calibration.Coverage;

/// <summary>
/// A pad whose errors are known, for calibration procedures by the thousand. Its physics is written for this purpose alone and shares
/// nothing with the calibration that it tests.
/// </summary>
sealed class SimulatedPad(Random random)
{
    public double ZeroCounts { get; set; } = 41_000;
    public double CountsPerKg { get; set; } = 400;
    public double CapacityKg { get; set; } = 450;

    /// <summary>Bow above the straight line half way, kg.</summary>
    public double BowKg { get; set; }

    /// <summary>Way down above way up half way, kg.</summary>
    public double HysteresisKg { get; set; }

    /// <summary>Repeatability of a settled reading, kg.</summary>
    public double NoiseKg { get; set; } = 0.01;

    /// <summary>Repeatability of placing a load, kg.</summary>
    public double PlacingKg { get; set; }

    /// <summary>Zero after a repetition minus before it, kg; lost again before the next.</summary>
    public double ZeroReturnKg { get; set; }

    /// <summary>Factor on the force, all else being as at the reference: gravity, air, temperature, creep.</summary>
    public double Sensitivity { get; set; } = 1;

    /// <summary>True to round counts to whole numbers.</summary>
    public bool Rounds { get; set; }

    /// <summary>A settled reading under <paramref name="kg"/>; <paramref name="down"/> from 0 (way up) to 1 (way down).</summary>
    public double Read(double kg, double down = 0, double zeroShiftKg = 0)
    {
        var share = kg / CapacityKg;
        var placing = kg > 0 ? PlacingKg * Normal() : 0;
        var output = kg * Sensitivity + 4 * (BowKg + (down - 0.5) * HysteresisKg) * share * (1 - share);
        var counts = ZeroCounts + CountsPerKg * (output + placing + zeroShiftKg + NoiseKg * Normal());
        return Rounds ? Math.Round(counts) : counts;
    }

    /// <summary>Runs up and down over the stacks, the empty pad first and last; true masses by label.</summary>
    public List<ProcedurePoint> Calibrate(IReadOnlyList<LoadStack> stacks, Func<string, double> trueKg, int repetitions = 3)
    {
        List<ProcedurePoint> points = [];
        for (var repetition = 1; repetition <= repetitions; repetition++)
        {
            foreach (var stack in stacks)
                points.Add(new(stack, repetition, LoadingWay.Up, Read(Kg(stack, trueKg))));
            foreach (var stack in stacks.Reverse().Skip(1))
                points.Add(new(stack, repetition, LoadingWay.Down, Read(Kg(stack, trueKg), 1, stack.IsEmpty ? ZeroReturnKg : 0)));
        }
        return points;
    }

    public double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    /// <summary>Anywhere within ± <paramref name="limit"/>.</summary>
    public double Within(double limit) => limit * (2 * random.NextDouble() - 1);

    static double Kg(LoadStack stack, Func<string, double> trueKg) =>
        stack.Masses.Sum(trueKg) + stack.Ballast.Sum(trueKg);
}
