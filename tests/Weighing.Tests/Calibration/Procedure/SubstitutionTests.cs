using ScaleLink.Weighing.Calibration.Masses;
using ScaleLink.Weighing.Calibration.Procedure;

namespace Weighing.Tests.Calibration.Procedure;

/// <summary>No published source: ballast of known truth that the calibration procedure must find.</summary>
public class SubstitutionTests
{
    static readonly MassSet Owned = new([.. Enumerable.Range(1, 5).Select(i => KnownMass.OfClass($"20-{i}", 20, WeightClass.M1))]);
    static readonly Dictionary<string, double> Ballast = new() { ["ballast 1"] = 97.3, ["ballast 2"] = 104.1, ["ballast 3"] = 99.6 };

    [Fact]
    public void Steps_reach_the_load_and_never_pass_the_capacity()
    {
        var steps = Steps();
        Assert.True(steps[0].IsEmpty);
        Assert.Equal(["ballast 1", "ballast 2", "ballast 3"], steps[^1].Ballast);
        Assert.Equal(5, steps[^1].Masses.Count);
        Assert.Equal("SL-308", Assert.Throws<RefusedException>(() => SubstitutionPlan.Steps(Owned, [], 500, 450)).Diagnostic.Code);
    }

    [Fact]
    public void Ballast_and_span_come_out_within_their_uncertainty_far_beyond_the_masses_owned()
    {
        var inside = 0;
        for (var seed = 0; seed < 40; seed++)
        {
            var report = Calibrate(seed, bowKg: 0.3);
            Assert.Empty(report.Refusals);
            Assert.Equal(401, report.Calibration!.CalibratedToKg, 0.5);
            inside += report.Curve!.Ballast.Count(b => Math.Abs(b.Kg - Ballast[b.Label]) < 2 * b.StandardUncertaintyKg);
            Assert.Equal(400, report.Calibration.Kg(Pad(0, 0.3).Read(400, 0.5) - 41_000), report.Calibration.Budget(400).Expanded(0.999));
        }
        Assert.InRange(inside, 108, 120);
    }

    [Fact]
    public void Each_substitution_costs_certainty()
    {
        var curve = Calibrate(1, 0).Curve!;
        Assert.Equal(["ballast 1", "ballast 2", "ballast 3"], curve.Ballast.Select(b => b.Label));
        var total = curve.Repeatability.AtCounts(400 * 400);
        Assert.True(total > 3 * curve.Repeatability.AtCounts(400 * 100), "The uncertainty at 400 kg must exceed that at the 100 kg owned.");
    }

    [Fact]
    public void Ballast_that_never_met_the_masses_is_refused()
    {
        LoadStack[] stacks = [LoadStack.Empty, LoadStack.Of("20-1"), LoadStack.Of("20-1", "20-2"), LoadStack.Of("20-1", "20-2").On("ballast 1", "ballast 2")];
        var report = CalibrationEvaluation.Evaluate(Bench.Input(Pad(1, 0).Calibrate(stacks, Kg), Owned));
        Assert.Equal("SL-324", Assert.Single(report.Refusals).Code);
    }

    static ProcedureReport Calibrate(int seed, double bowKg) => CalibrationEvaluation.Evaluate(Bench.Input(Pad(seed, bowKg).Calibrate(Steps(), Kg), Owned));

    static IReadOnlyList<LoadStack> Steps() => SubstitutionPlan.Steps(Owned, [LoadStack.Of("20-1", "20-2"), LoadStack.Of("20-1", "20-2", "20-3", "20-4")], 400, 450);

    static Coverage.SimulatedPad Pad(int seed, double bowKg) => new(new Random(seed)) { NoiseKg = 0.01, BowKg = bowKg };

    static double Kg(string label) => Ballast.TryGetValue(label, out var kg) ? kg : Owned[label].Kg;
}
