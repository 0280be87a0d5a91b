using ScaleLink.Weighing.Calibration.Flow;
using ScaleLink.Weighing.Pads;

namespace Weighing.Tests.Calibration.Flow;

/// <summary>Steps that are left out, and what is still made of the rest.</summary>
public class SkippingTests
{
    [Fact]
    public void A_step_left_out_is_not_asked_for_again_and_comes_back_with_the_step_before()
    {
        var walk = ProcedureWalk.To(3);
        var left = walk.Flow.Next!.Step;
        walk.Flow = walk.Flow.Skip().Flow;
        Assert.NotEqual(left, walk.Flow.Next!.Step);
        walk.Flow = ProcedureFlowJson.Read(ProcedureFlowJson.Write(walk.Flow));
        Assert.Equal([left], walk.Flow.Skipped);
        walk.Flow = walk.Flow.StepBack().Flow;
        Assert.Empty(walk.Flow.Skipped);
    }

    [Fact]
    public void Finished_after_some_runs_the_calibration_procedure_is_made_of_them()
    {
        var walk = new ProcedureWalk().While(f => f.Next!.Step is not { Stage: ProcedureStage.Repetitions, Repetition: 3 });
        walk.Flow = walk.Flow.Finish().Flow;
        Assert.Equal(ProcedureStage.Review, walk.Flow.Stage);
        var report = walk.Flow.Report();
        Assert.Empty(report.Refusals);
        Assert.Null(report.Characteristics!.Creep);
        Assert.Contains(BudgetTerms.Creep, report.TakenAsUsual);
    }

    [Fact]
    public void Finished_before_any_run_there_is_nothing_to_adopt()
    {
        var walk = ProcedureWalk.To(0);
        var finished = walk.Flow.Finish().Flow;
        Assert.Equal("SL-314", Assert.Single(finished.Report().Refusals).Code);
        Assert.False(finished.Accept("tester", walk.Now).Accepted);
        Assert.False(finished.Finish().Accepted);
        Assert.False(finished.Skip().Accepted);
    }

    [Fact]
    public void A_repetition_taken_again_brings_back_what_was_left_out_of_it()
    {
        var walk = ProcedureWalk.To(2);
        walk.Flow = walk.Flow.Skip().Flow;
        walk.Flow = walk.Flow.RetakeRepetition(1).Flow;
        Assert.Empty(walk.Flow.Skipped);
        Assert.True(walk.Flow.Next!.Step.Load.IsEmpty);
    }

    [Fact]
    public void What_no_reading_can_tell_has_to_be_said()
    {
        var walk = new ProcedureWalk();
        List<(ProcedureStage Stage, string Spot, bool Untold)> steps = [];
        walk.While(f =>
        {
            steps.Add((f.Next!.Step.Stage, f.Next.Step.Spot, f.Next.IsUntold));
            return true;
        });
        Assert.All(steps, s => Assert.Equal(s.Spot.Length > 0 && s.Spot != "over cell 1", s.Untold));
    }

    [Fact]
    public void Progress_holds_the_readings_against_the_curve_as_soon_as_there_is_one()
    {
        var walk = new ProcedureWalk().While(f => f.Next!.Step is not { Stage: ProcedureStage.Repetitions, Repetition: 2 });
        var points = ProcedureProgress.Of(walk.Flow);
        Assert.Equal(walk.Flow.Readings, points.Select(p => p.Taken));
        var repetitions = points.Where(p => p.Taken.Step.Stage == ProcedureStage.Repetitions).ToList();
        Assert.All(repetitions, p => Assert.InRange(p.ResidualKg!.Value, -0.1, 0.1));
        // The walk's calibration before is near the truth: what it reads is near what was put on.
        Assert.All(repetitions, p => Assert.InRange(p.ReadKg!.Value - p.LoadKg!.Value, -10, 10));
        Assert.All(points.Except(repetitions), p => Assert.Null(p.ResidualKg));
    }
}
