using ScaleLink.Weighing.Calibration.Flow;
using ScaleLink.Weighing.Calibration.Procedure;
using ScaleLink.Weighing.Pads;

namespace Weighing.Tests.Calibration.Flow;

/// <summary>A pad of which nobody knows how many kilograms a count is: capacity and masses are all that the plan is made of.</summary>
public class FirstProcedureTests
{
    [Fact]
    public void The_first_calibration_needs_no_sensitivity_and_comes_out_as_with_one()
    {
        var (without, with) = (First().While(_ => true), new ProcedureWalk().While(_ => true));
        var (found, known) = (without.Flow.Report(), with.Flow.Report());
        Assert.Empty(found.Refusals);
        Assert.Equal(known.Calibration!.SpanKgPerCount, found.Calibration!.SpanKgPerCount, 1e-6 * known.Calibration.SpanKgPerCount);
        Assert.Equal(known.Characteristics!.Creep!.Value.After30MinKg, found.Characteristics!.Creep!.Value.After30MinKg, 1e-3);
        Assert.EndsWith("the first calibration of this pad.", ProcedureConclusion.Of(found, without.Flow.Plan.Before).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Somebody_has_to_say_that_it_is_empty_and_that_the_first_load_stands()
    {
        var walk = First();
        Assert.True(walk.Flow.Next!.IsUntold);
        walk.Offer(walk.Read());
        Assert.True(walk.Flow.Next!.IsUntold);
        walk.Offer(walk.Read());
        Assert.False(walk.Flow.Next!.IsUntold);
        Assert.Equal(1 / 400.0, walk.Flow.Scale!.SpanKgPerCount, 1e-5);
    }

    [Fact]
    public void A_first_load_that_did_not_come_is_refused_and_the_second_is_held_against_the_first()
    {
        var walk = First();
        walk.Offer(walk.Read());
        Assert.Equal("SL-305", Assert.Single(walk.Offer(walk.Read(0))).Code);
        walk.While(f => f.Stage != ProcedureStage.Repetitions || f.Next!.Step.Load.Masses.Count < 2);
        Assert.Equal("SL-325", Assert.Single(walk.Offer(walk.Read(20 + 30))).Code);
        Assert.Equal("SL-308", Assert.Single(walk.Offer(walk.Read(480))).Code);
    }

    [Fact]
    public void It_is_taken_up_after_a_restart_with_what_it_has_found()
    {
        var walk = First();
        walk.Offer(walk.Read());
        walk.Offer(walk.Read());
        Assert.Equal(walk.Flow.Scale!.SpanKgPerCount, ProcedureFlowJson.Read(ProcedureFlowJson.Write(walk.Flow)).Scale!.SpanKgPerCount);
    }

    static ProcedureWalk First() => new()
    {
        Flow = ProcedureFlow.Begin(ProcedureWalk.Plan with { Before = PadCalibration.WithoutSensitivity("P1", 450, 2, ProcedureWalk.Plan.Place), EmptyCounts = null }),
    };
}
