using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Workflows.WorkSessions;
using ScaleLink.Daemon.Workflows.WorkSessions.Service;
using ScaleLink.Daemon.Workflows.WorkSessions.Standings;
using ScaleLink.Daemon.Workflows.WorkSessions.Steps;
using ScaleLink.Measure;

namespace Daemon.Tests.Workflows.WorkSessions;

/// <summary>The steps of a session: which are taken when, and what they make of it.</summary>
public class WorkSessionTests
{
    [Fact]
    public void A_session_read_back_from_the_ledger_is_the_same_session()
    {
        using var bench = new Bench();
        bench.Prepare();
        bench.Weigh(Bench.FirstLoads);
        bench.Take(SessionRules.EnterHeights(bench.View, new(110, 111, 120, 121)));
        bench.Turn(new(0, -0.5, -0.5, 0));
        bench.Weigh(Bench.LoadsAfter(new(0, -0.5, -0.5, 0), 0.05));
        bench.Turn(new(0, 0, -0.25, 0));
        var again = bench.Ledger.Find(bench.Session.Id)!;
        Assert.Equal(bench.Session.Entry, again.Entry);
        Assert.Equal(bench.Session.Known!.CrossWeightPercent, again.Known!.CrossWeightPercent);
        Assert.Equal(bench.Session.OpenTurns, again.OpenTurns);
        Assert.Equal(bench.Session.Open[0].Predicted, again.Open[0].Predicted);
        Assert.Equal(bench.Session.HeightsNowMm, again.HeightsNowMm);
        Assert.Equal(SessionStage.Settling, new SessionView(again, new([])).Stage);
        Assert.Equal(bench.Session.Id, bench.Ledger.Open()!.Id);
    }

    [Fact]
    public void The_baseline_waits_for_the_preparation_and_a_step_for_its_turn()
    {
        using var bench = new Bench();
        Assert.Equal("SL-562", Refused(() => bench.Weigh(Bench.FirstLoads)));
        Assert.Equal("SL-562", Refused(() => bench.Turn(new(0.5, 0, 0, 0))));
        Assert.Equal("SL-564", Refused(() => SessionRules.Check(bench.View, "no_such_check", true, false, "", "")));
        Assert.Equal("SL-569", Refused(() => SessionRules.Check(bench.View, "fuel", false, true, "", "")));
        bench.Prepare();
        Assert.Equal(SessionStage.Baseline, bench.View.Stage);
        bench.Weigh(Bench.FirstLoads);
        Assert.Equal(SessionStage.Planning, bench.View.Stage);
        Assert.Equal("SL-566", Refused(() => SessionRules.Finish(bench.View, "")));
        Assert.Equal("SL-569", Refused(() => bench.Turn(new(double.NaN, 0, 0, 0))));
        Assert.Equal("SL-562", Refused(() => SessionRules.Undo(bench.View)));
    }

    [Fact]
    public void What_the_bay_sees_for_itself_cannot_be_ticked_against_it_and_is_left_out_with_a_reason()
    {
        using var bench = new Bench();
        var view = bench.View with { Facts = new([new("pads_proved", false, "", [new(SessionCodes.PadsNotCalibrated, "Not calibrated with known masses: RR.", "Calibrate them.")]), new("pads_zeroed", true, "", [])]) };
        var refused = Assert.Throws<StepRefusedException>(() => SessionRules.Check(view, "pads_proved", done: true, skip: false, "", "")).Diagnostic;
        Assert.Equal(("SL-578", "The bay sees it otherwise: Not calibrated with known masses: RR."), (refused.Code.Text, refused.Message.ToString()));
        Assert.True(SessionRules.Check(view, "pads_proved", done: false, skip: true, "", "changes are enough today").Skipped);
        Assert.True(SessionRules.Check(view, "pads_zeroed", done: true, skip: false, "", "").Done);
        Assert.True(SessionMapping.Session(view).Preparation.Single(c => c.Key == "pads_proved").SeenOtherwise);
    }

    [Fact]
    public void The_same_rest_is_not_weighed_twice()
    {
        using var bench = new Bench();
        bench.Prepare();
        bench.Weigh(Bench.FirstLoads);
        var last = bench.Session.Weighings[^1].Step.Reading;
        Assert.Equal("SL-568", Refused(() => SessionRules.Weigh(bench.View, last, null, "")));
    }

    [Fact]
    public void A_rest_that_nobody_watched_is_the_same_one_while_the_loads_are()
    {
        using var bench = new Bench();
        bench.Prepare();
        bench.Weigh(Bench.FirstLoads);
        // A zero that wandered by 50 g, noise of 30 g.
        Assert.Equal("SL-568", Refused(() => SessionRules.Weigh(bench.View, bench.Unseen(Bench.FirstLoads + Corners.Same(0.05)), null, "")));
        // 0.1 % of cross weight: half a kilogram at each corner.
        Assert.Equal(WeighingKind.Settle, SessionRules.Weigh(bench.View, bench.Unseen(Bench.LoadsAfter(default, 0.1)), null, "").Kind);
        Assert.Equal(WeighingKind.Settle, SessionRules.Weigh(bench.View, bench.Reading(Bench.FirstLoads), null, "").Kind);
    }

    [Fact]
    public void The_plan_leads_to_the_target_and_its_prediction_stands_before_the_reading()
    {
        using var bench = new Bench();
        bench.Prepare();
        bench.Weigh(Bench.FirstLoads);
        bench.Take(SessionRules.Adjust(bench.View, null, asPlanned: true, ""));
        var planned = bench.Session.OpenTurns;
        var predicted = bench.Session.Open[0].Predicted!.CrossWeightPercent;
        Assert.InRange(predicted.Estimate, 49.8, 50.2);
        bench.Weigh(Bench.LoadsAfter(planned));
        Assert.Equal(predicted, bench.Session.Weighings[^1].Adjustment!.Predicted!.CrossWeightPercent);
        Assert.Empty(bench.Session.Weighings[^1].Step.Findings);
        Assert.Equal(SessionStage.Finishing, bench.View.Stage);
        Assert.Equal(-1 * planned, -1 * bench.Session.TurnsSinceBaseline);
    }

    [Fact]
    public void In_the_list_of_sessions_each_has_its_way_to_the_target()
    {
        using var bench = new Bench();
        Assert.Empty(SessionMapping.Line(bench.View).CrossWeightsPercent);
        bench.Prepare();
        bench.Weigh(Bench.FirstLoads);
        bench.Turn(new(0, -0.5, -0.5, 0));
        bench.Weigh(Bench.LoadsAfter(new(0, -0.5, -0.5, 0)));
        var line = SessionMapping.Line(bench.View);
        Assert.Equal(bench.Session.Weighings.Select(w => w.CrossWeightPercent), line.CrossWeightsPercent);
        Assert.Equal((50, 0.2), (line.TargetCrossWeightPercent, line.TargetTolerancePercent));
    }

    [Fact]
    public void A_change_that_nobody_recorded_is_noticed_and_gets_its_name()
    {
        using var bench = new Bench();
        bench.Prepare();
        bench.Weigh(Bench.FirstLoads);
        Corners secret = new(0, 1.5, 0, 0);
        bench.Weigh(Bench.LoadsAfter(secret));
        Assert.Equal(SessionStage.Naming, bench.View.Stage);
        Assert.Equal("SL-551", bench.Session.Weighings[^1].Step.Findings[0].Code);
        Assert.Equal("SL-562", Refused(() => bench.Turn(new(0, 0.25, 0, 0))));
        bench.Take(SessionRules.Name(bench.View, secret, null));
        Assert.Equal(secret, bench.Session.TurnsSinceBaseline);
        Assert.Empty(bench.Session.Weighings[^1].OpenFindings);
        Assert.Equal(SessionStage.Planning, bench.View.Stage);
    }

    [Fact]
    public void A_name_that_does_not_explain_the_change_is_told_and_can_be_confirmed()
    {
        using var bench = new Bench();
        bench.Prepare();
        bench.Weigh(Bench.FirstLoads);
        bench.Weigh(Bench.LoadsAfter(new(0, 1.5, 0, 0)));
        // Down instead of up.
        bench.Take(SessionRules.Name(bench.View, new Corners(0, -1.5, 0, 0), null));
        Assert.Equal("SL-550", Assert.Single(bench.Session.Weighings[^1].OpenFindings).Code);
        Assert.Equal("SL-550", Assert.Single(bench.Ledger.Find(bench.Session.Id)!.Weighings[^1].OpenFindings).Code);
        Assert.True(SessionMapping.Session(bench.View).CanConfirm);
        bench.Take(SessionRules.Confirm(bench.View));
        Assert.Empty(bench.Session.Weighings[^1].OpenFindings);
        Assert.False(SessionMapping.Session(bench.View).CanConfirm);
    }

    [Fact]
    public void After_another_change_than_turns_the_readings_before_it_do_not_count()
    {
        using var bench = new Bench();
        bench.Prepare();
        bench.Weigh(Bench.FirstLoads);
        bench.Weigh(Bench.FirstLoads + new Corners(0, 0, 6, 6));
        Assert.Equal(SessionStage.Naming, bench.View.Stage);
        bench.Take(SessionRules.Name(bench.View, null, "12 kg of ballast behind"));
        Assert.Equal([false, true], bench.Session.Weighings.Select(c => c.Counts));
        Assert.Equal(1, Standing.Of(bench.Session)!.Settles);
    }

    [Fact]
    public void A_step_that_surprises_says_so_and_can_be_confirmed()
    {
        using var bench = new Bench();
        bench.Prepare();
        bench.Weigh(Bench.FirstLoads);
        bench.Turn(new(0, -1, 0, 0));
        // The other way: as if up and down had been mixed up.
        bench.Weigh(Bench.LoadsAfter(new(0, 1, 0, 0)));
        var weighing = bench.Session.Weighings[^1].Step;
        Assert.Equal("SL-550", weighing.Findings[0].Code);
        Assert.Contains(weighing.Causes, c => c.Explains && c.Words.ToString().Contains("other way"));
        var before = bench.Session.Known!;
        Assert.True(SessionMapping.Session(bench.View).CanConfirm);
        // A turn that waits for its reading comes first.
        bench.Turn(new(0, 0.25, 0, 0));
        Assert.False(SessionMapping.Session(bench.View).CanConfirm);
        bench.Take(SessionRules.Undo(bench.View));
        bench.Take(SessionRules.Confirm(bench.View));
        Assert.NotSame(before, bench.Session.Known);
        Assert.Empty(bench.Session.Weighings[^1].OpenFindings);
        Assert.Equal("SL-550", bench.Session.Weighings[^1].Step.Findings[0].Code);
        Assert.Equal("SL-562", Refused(() => SessionRules.Confirm(bench.View)));
        Assert.Empty(bench.Ledger.Find(bench.Session.Id)!.Weighings[^1].OpenFindings);
    }

    [Fact]
    public void The_corrections_of_the_patch_stay_with_the_reading()
    {
        using var bench = new Bench();
        bench.Prepare();
        BayReading live = new()
        {
            Seq = 1, AtNs = 1, Verdict = BayVerdict.Settled, Remark = "",
            Corners = [.. Corners.All.ToArray().Select(c => new CornerReading { Corner = c, Corrections = [new("zero", 5), new("slope", null, "refused"), new("warp", 1 + (int)c)] })],
        };
        var reading = bench.Reading(Bench.FirstLoads) with { Patch = PatchInReading.Of(live) };
        Assert.Equal([new("slope", null), new("warp", new(1, 2, 3, 4))], reading.Patch);
        bench.Take(SessionRules.Weigh(bench.View, reading, null, ""));
        Assert.Equal(reading.Patch, bench.Ledger.Find(bench.Session.Id)!.Weighings[0].Step.Reading.Patch);
        var told = SessionMapping.Session(bench.View).Weighings[0].Patch;
        Assert.Equal([("slope", null), ("warp", 2)], told.Select(p => (p.Name, p.SizeKg?.Rf)));
        Assert.Empty(PatchInReading.Of(live with { Corners = [.. live.Corners.Select(c => c with { Corrections = [] })] }));
    }

    [Fact]
    public void An_undone_adjustment_leaves_no_turns_behind()
    {
        using var bench = new Bench();
        bench.Prepare();
        bench.Weigh(Bench.FirstLoads);
        bench.Turn(new(0, -0.5, 0, 0));
        bench.Turn(new(0, -0.25, 0, 0));
        Assert.Equal(-0.75, bench.Session.OpenTurns.RF);
        bench.Take(SessionRules.Undo(bench.View));
        bench.Take(SessionRules.Undo(bench.View));
        Assert.Equal(default, bench.Session.OpenTurns);
        Assert.Equal(SessionStage.Planning, bench.View.Stage);
    }

    private static string Refused(Action step) => Assert.Throws<StepRefusedException>(step).Diagnostic.Code;

    private static string Refused(Func<object> step) => Assert.Throws<StepRefusedException>(step).Diagnostic.Code;
}
