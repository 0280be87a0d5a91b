using System.Net;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Workflows.WorkSessions;
using ScaleLink.Daemon.Workflows.WorkSessions.Export;
using ScaleLink.Daemon.Workflows.WorkSessions.Service;
using ScaleLink.Measure;

namespace Daemon.Tests.Workflows.WorkSessions;

/// <summary>
/// A wrong turn that is recorded and read is put right. What follows from the session then is what would have followed had the right turn been written
/// at once; what had been written stays on record.
/// </summary>
public class TurnsCorrectedTests
{
    private static readonly Corners Written = new(-1.5, 0, 0, 0), Done = new(1.5, 0, 0, 0);

    [Fact]
    public void The_session_is_as_if_the_right_turns_had_been_written_at_once()
    {
        using var wrong = Surprised();
        using var right = new Bench();
        right.Prepare();
        right.Weigh(Bench.FirstLoads);
        right.Turn(Done);
        right.Weigh(Bench.LoadsAfter(Done, 0.02));

        Assert.Equal("SL-550", Assert.Single(wrong.Session.Weighings[^1].OpenFindings).Code);
        Assert.Equal("Not what was expected: find out why before the next turn.", SessionWords.Next(wrong.View));
        wrong.Take(SessionRules.Correct(wrong.View, 1, Done));
        Same(right.Session, wrong.Session);
        Assert.Empty(wrong.Session.Weighings[^1].OpenFindings);
        // What had been written, and who put it right, stays.
        Assert.Equal((Written, "crew"), (wrong.Session.Weighings[^1].Correction!.Recorded, wrong.Session.Weighings[^1].Correction!.Who));
        var wire = SessionMapping.Session(wrong.View).Weighings[^1];
        Assert.Equal((-1.5, 1.5, "crew"), (wire.RecordedTurns.Lf, wire.Adjustment.Turns.Lf, wire.CorrectedBy));
        Same(wrong.Session, wrong.Ledger.Find(wrong.Session.Id)!);
        Assert.Contains("1: written as LF down 1\u00bd turns; put right by crew", WebUtility.HtmlDecode(SessionSheet.Of(wrong.View)), StringComparison.Ordinal);
    }

    [Fact]
    public void What_came_after_the_wrong_step_follows_too()
    {
        using var bench = Surprised();
        bench.Weigh(Bench.LoadsAfter(Done, -0.03));
        bench.Turn(new(0, -0.25, 0, 0));
        var before = bench.Session;
        bench.Take(SessionRules.Correct(bench.View, 1, Done));
        Assert.Equal(Done, bench.Session.TurnsSinceBaseline);
        Assert.Equal(before.OpenTurns, bench.Session.OpenTurns);
        Assert.NotEqual(before.Open[^1].Predicted!.CrossWeightPercent, bench.Session.Open[^1].Predicted!.CrossWeightPercent);
        Assert.Equal(new Corners(-1.5, 0.25, 0, 0), -1 * (bench.Session.TurnsSinceBaseline + bench.Session.OpenTurns));
        Same(bench.Session, bench.Ledger.Find(bench.Session.Id)!);
    }

    [Fact]
    public void The_suggestion_of_the_diagnosis_is_what_has_to_be_handed_back()
    {
        using var bench = Surprised();
        var cause = SessionMapping.Session(bench.View).Weighings[^1].Causes[0];
        Assert.Equal(("wrong_direction", 1.5), (cause.Cause, cause.Turns.Lf));
        Assert.Contains("LF had been turned the other way", cause.Words);
    }

    [Fact]
    public void Nothing_turned_at_all_and_a_second_thought_are_taken_too()
    {
        using var bench = Surprised();
        bench.Take(SessionRules.Correct(bench.View, 1, default));
        Assert.Null(bench.Session.Weighings[^1].Adjustment);
        Assert.Equal(default, bench.Session.TurnsSinceBaseline);
        // Still not explained, and told so.
        Assert.NotEmpty(bench.Session.Weighings[^1].OpenFindings);
        bench.Take(SessionRules.Correct(bench.View, 1, Done));
        Assert.Equal(Done, bench.Session.TurnsSinceBaseline);
        Assert.Equal(Written, bench.Session.Weighings[^1].Correction!.Recorded);
    }

    [Fact]
    public void A_change_that_got_the_wrong_name_is_put_right()
    {
        using var bench = new Bench();
        bench.Prepare();
        bench.Weigh(Bench.FirstLoads);
        bench.Weigh(Bench.LoadsAfter(Done));
        Assert.Equal("SL-562", Refused(() => SessionRules.Correct(bench.View, 1, Done)));
        bench.Take(SessionRules.Name(bench.View, Written, null));
        bench.Take(SessionRules.Correct(bench.View, 1, Done));
        Assert.Equal(Done, bench.Session.TurnsSinceBaseline);
        Assert.Empty(bench.Session.Weighings[^1].OpenFindings);
    }

    [Fact]
    public void What_cannot_be_put_right_is_refused()
    {
        using var bench = Surprised();
        Assert.Equal("SL-569", Refused(() => SessionRules.Correct(bench.View, 0, Done)));
        Assert.Equal("SL-569", Refused(() => SessionRules.Correct(bench.View, 2, Done)));
        Assert.Equal("SL-569", Refused(() => SessionRules.Correct(bench.View, 1, Written)));
        Assert.Equal("SL-569", Refused(() => SessionRules.Correct(bench.View, 1, new(double.NaN, 0, 0, 0))));
        bench.Take(SessionRules.Abandon(bench.View, "enough"));
        Assert.Equal("SL-562", Refused(() => SessionRules.Correct(bench.View, 1, Done)));
    }

    private static Bench Surprised()
    {
        var bench = new Bench();
        bench.Prepare();
        bench.Weigh(Bench.FirstLoads);
        bench.Turn(Written);
        bench.Weigh(Bench.LoadsAfter(Done, 0.02));
        return bench;
    }

    private static void Same(WorkSession expected, WorkSession actual)
    {
        Assert.Equal(expected.TurnsSinceBaseline, actual.TurnsSinceBaseline);
        Assert.Equal(expected.Known!.CrossWeightPercent, actual.Known!.CrossWeightPercent);
        Assert.Equal(expected.Known.Effects.LoadsPerTurn, actual.Known.Effects.LoadsPerTurn);
        Assert.Equal(expected.Weighings[^1].Adjustment?.Turns, actual.Weighings[^1].Adjustment?.Turns);
        Assert.Equal(expected.Weighings[^1].Adjustment?.Predicted, actual.Weighings[^1].Adjustment?.Predicted);
        Assert.Equal(SessionPlan.Of(expected)?.Plan?.Turns, SessionPlan.Of(actual)?.Plan?.Turns);
    }

    private static string Refused(Func<object> step) => Assert.Throws<StepRefusedException>(step).Diagnostic.Code;
}
