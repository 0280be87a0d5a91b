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
        // 2 % as a rectangle, all plates together: 1.96 x 0.02 / sqrt 3 x 200 kg = 4.53 kg.
        var plates = new MassSet([.. Enumerable.Range(1, 10).Select(i => KnownMass.Stated($"P{i}", 20, 0.4))]);
        var plan = ProcedureWalk.Plan with
        {
            Masses = plates,
            Loads = [LoadStack.Of("P1", "P2", "P3"), LoadStack.Of([.. plates.Masses.Select(m => m.Label)])],
            CornerLoad = null,
            Asked = new AskedUncertainty(0.1, 200),
        };
        var refusal = Assert.Single(ProcedurePlanCheck.Of(plan));
        Assert.Equal("SL-315", refusal.Code);
        Assert.Contains("±4.526 kg", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_plan_that_can_never_be_fitted_is_refused_before_it_begins()
    {
        // Two loads once up: three readings for two unknowns leave one to check by, and no reading can change that.
        var plan = ProcedureWalk.Plan with { Loads = [ProcedureWalk.Plan.Loads[2], ProcedureWalk.Plan.Loads[^1]], Repetitions = 1, WayDown = false, CornerLoad = null };
        var refusal = Assert.Single(ProcedurePlanCheck.Of(plan));
        Assert.Equal("SL-314", refusal.Code);
        Assert.Contains("3 points for 2 unknowns; add 1", refusal.Message, StringComparison.Ordinal);
        Assert.Empty(ProcedurePlanCheck.Of(plan with { Repetitions = 2 }));
    }

    [Fact]
    public void Two_pieces_of_ballast_that_never_stand_apart_are_refused_before_it_begins() => Assert.Equal("SL-324", Assert.Single(ProcedurePlanCheck.Of(
        ProcedureWalk.Plan with { Loads = [LoadStack.Of("50 A"), LoadStack.Of("50 A", "50 B"), LoadStack.Of("50 A", "50 B").On("drum", "slab")], CornerLoad = null })).Code);

    [Fact]
    public void What_is_asked_beyond_the_masses_is_refused_before_it_begins()
    {
        var refusal = Assert.Single(ProcedurePlanCheck.Of(ProcedureWalk.Plan with { Asked = new AskedUncertainty(1, 400) }));
        Assert.Equal("SL-331", refusal.Code);
        Assert.Contains("asked at 400 kg, the masses reach 200 kg", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_even_a_perfect_pad_does_not_reach_is_refused_before_it_begins()
    {
        // Temperature alone leaves 2e-5 x 10 K x 200 kg / sqrt 3 / sqrt 2 cells = 0.016 kg, one standard uncertainty.
        var refusal = Assert.Single(ProcedurePlanCheck.Of(ProcedureWalk.Plan with { Asked = new AskedUncertainty(0.02, 200) }));
        Assert.Equal("SL-315", refusal.Code);
        Assert.Contains("what is usual for a pad", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Counts_too_coarse_for_the_masses_are_refused_before_anybody_lifts() => Assert.Equal("SL-307", Assert.Single(ProcedurePlanCheck.Of(
        ProcedureWalk.Plan with { Before = ProcedureWalk.Plan.Before with { SpanKgPerCount = 0.5 } })).Code);

    [Fact]
    public void A_flow_does_not_begin_with_a_bad_plan() => Assert.Equal("SL-314",
        Assert.Throws<RefusedException>(() => ProcedureFlow.Begin(ProcedureWalk.Plan with { Repetitions = 0 })).Diagnostic.Code);
}
