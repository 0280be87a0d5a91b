using ScaleLink.Weighing.Calibration.Flow;
using ScaleLink.Weighing.Calibration.Masses;
using ScaleLink.Weighing.Calibration.Procedure;

namespace Weighing.Tests.Calibration.Flow;

public class ProcedurePlanCheckTests
{
    [Fact]
    public void The_plan_of_the_walk_is_good() => Assert.Empty(ProcedurePlanCheck.Of(ProcedureWalk.Plan));

    [Fact]
    public void Every_mistake_is_listed_at_once()
    {
        var masses = new MassSet([KnownMass.Stated("slab", 600, 3), KnownMass.OfClass("20 A", 20, WeightClass.M1)]);
        var plan = ProcedureWalk.Plan with
        {
            Masses = masses,
            Loads = [LoadStack.Of("slab"), LoadStack.Of("20 A"), LoadStack.Of("20 A")],
            CornerLoad = LoadStack.Of("slab"),
            Repetitions = 0,
            Asked = new AskedUncertainty(0.1, 400),
        };
        Assert.Equal(["SL-305", "SL-306", "SL-306", "SL-308", "SL-308", "SL-314", "SL-315"],
            ProcedurePlanCheck.Of(plan).Select(r => r.Code.Text).Order());
    }

    [Fact]
    public void Masses_nobody_listed_are_refused_first() =>
        Assert.Equal("SL-316", Assert.Single(ProcedurePlanCheck.Of(ProcedureWalk.Plan with { CornerLoad = LoadStack.Of("ghost") })).Code);

    [Fact]
    public void One_small_mass_is_no_calibration_procedure_of_a_pad_of_450_kg() => Assert.Equal(["SL-314", "SL-331"],
        ProcedurePlanCheck.Of(ProcedureWalk.Plan with { Loads = [LoadStack.Of("20 A")] }).Select(r => r.Code.Text));

    [Fact]
    public void Plates_of_two_per_cent_cannot_reach_a_tenth_of_a_kilogram()
    {
        // 2 % as a rectangle, all plates together: 1.96 x 0.02 / sqrt 3 x 400 kg = 9.05 kg.
        var plates = new MassSet([.. Enumerable.Range(1, 10).Select(i => KnownMass.Stated($"P{i}", 20, 0.4))]);
        var plan = ProcedureWalk.Plan with
        {
            Masses = plates,
            Loads = [LoadStack.Of("P1", "P2", "P3"), LoadStack.Of([.. plates.Masses.Select(m => m.Label)])],
            CornerLoad = null,
            Asked = new AskedUncertainty(0.1, 400),
        };
        var refusal = Assert.Single(ProcedurePlanCheck.Of(plan));
        Assert.Equal("SL-315", refusal.Code);
        Assert.Contains("±9.053 kg", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_flow_does_not_begin_with_a_bad_plan() => Assert.Equal("SL-314",
        Assert.Throws<RefusedException>(() => ProcedureFlow.Begin(ProcedureWalk.Plan with { Repetitions = 0 })).Diagnostic.Code);
}
