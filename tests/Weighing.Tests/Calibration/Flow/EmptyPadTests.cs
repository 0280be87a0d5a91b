using ScaleLink.Weighing.Calibration;
using ScaleLink.Weighing.Calibration.Flow;
using ScaleLink.Weighing.Pads;

namespace Weighing.Tests.Calibration.Flow;

/// <summary>A pad that is to be empty and carries something, in every state of what is known of it.</summary>
public class EmptyPadTests
{
    [Fact]
    public void A_load_that_the_pad_did_not_carry_when_it_was_last_known_empty_is_refused()
    {
        var walk = new ProcedureWalk();
        var refusal = Assert.Single(walk.Offer(walk.Read(20)));
        Assert.Equal("SL-318", refusal.Code);
        Assert.Contains("carries +20.", refusal.Message, StringComparison.Ordinal);
        Assert.Empty(walk.Offer(walk.Read(0.5)));
    }

    [Fact]
    public void Whoever_knows_better_says_why_and_it_stays_with_the_reading()
    {
        var walk = new ProcedureWalk();
        var answer = walk.Flow.Take(walk.Read(20), "a new platform");
        Assert.True(answer.Accepted);
        Assert.Equal("a new platform", answer.Flow.Readings[0].Because);
        Assert.Equal("a new platform", ProcedureFlowJson.Read(ProcedureFlowJson.Write(answer.Flow)).Readings[0].Because);
        // Where nothing was to be explained the reason is not kept.
        Assert.Null(walk.Flow.Take(walk.Read(0), "no need").Flow.Readings[0].Because);
    }

    [Fact]
    public void A_calibrated_pad_is_held_against_its_calibration_when_no_zero_is_known()
    {
        var before = new ProcedureWalk().While(_ => true).Flow.Report().Calibration!;
        var walk = new ProcedureWalk { Flow = ProcedureFlow.Begin(ProcedureWalk.Plan with { Before = before, EmptyCounts = null }) };
        Assert.Equal("SL-318", Assert.Single(walk.Offer(walk.Read(20))).Code);
        Assert.Empty(walk.Offer(walk.Read(0)));
    }

    [Fact]
    public void A_pad_of_which_no_empty_reading_is_known_is_refused_where_it_reads_like_a_wheel()
    {
        // 8 % of 450 kg are 36 kg; the counts alone make 100 kg.
        var walk = new ProcedureWalk { Flow = ProcedureFlow.Begin(ProcedureWalk.Plan with { EmptyCounts = null }) };
        Assert.Equal("SL-333", Assert.Single(walk.Offer(walk.Read(0))).Code);
        Assert.True(walk.Flow.Take(walk.Read(0), "an amplifier with an offset").Accepted);
    }

    [Fact]
    public void What_was_left_on_the_pad_is_noticed_when_it_is_to_be_empty_again()
    {
        var walk = new ProcedureWalk().While(f => f.Next!.Step is not { Stage: ProcedureStage.Repetitions, Load.IsEmpty: true, Way: LoadingWay.Down });
        // 3 of the last 20 kg: the change is nearly what was to come, the pad is not empty all the same.
        var refusal = Assert.Single(walk.Offer(walk.Read(3)));
        Assert.Equal("SL-318", refusal.Code);
        Assert.Contains("at the beginning", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_several_zeros_the_lightest_counts_whichever_way_the_cells_are_wired()
    {
        Assert.Equal(100, EmptyCheck.Lightest(Wired(0.01), [500, 100, 300]));
        Assert.Equal(500, EmptyCheck.Lightest(Wired(-0.01), [500, 100, 300]));
        Assert.Null(EmptyCheck.Lightest(Wired(0.01), []));
    }

    static PadCalibration Wired(double span) => ProcedureWalk.Plan.Before with { SpanKgPerCount = span };
}
