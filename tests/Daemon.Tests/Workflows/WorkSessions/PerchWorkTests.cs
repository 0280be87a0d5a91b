using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Workflows.WorkSessions;
using ScaleLink.Daemon.Workflows.WorkSessions.Service;
using ScaleLink.Measure;

namespace Daemon.Tests.Workflows.WorkSessions;

/// <summary>What is planned, done and left at each perch, through a step that is half done, done otherwise and taken back.</summary>
public class PerchWorkTests
{
    [Fact]
    public void One_turn_done_leaves_the_others_as_they_were_planned()
    {
        using var bench = Weighed();
        var planned = Work(bench).Planned;
        var first = Corners.All.ToArray().First(c => planned[c] != 0);
        Assert.True(Corners.All.ToArray().Count(c => planned[c] != 0) > 1, $"a plan of one turn shows nothing here: {planned}");
        Assert.Equal(planned, Work(bench).Left);

        bench.Turn(default(Corners).With(first, planned[first]));
        Assert.Equal((planned, planned.With(first, 0), false), (Work(bench).Planned, Work(bench).Left, Work(bench).IsReplanned));
        Assert.StartsWith("Still to turn: ", SessionWords.Next(bench.View));
        Assert.DoesNotContain($"{first} ", SessionWords.Next(bench.View));
        // It is on the wire, the plan with it, until the weighing.
        var wire = SessionMapping.Session(bench.View);
        Assert.NotNull(wire.Plan);
        Assert.Equal([.. Corners.All.ToArray().Select(c => planned.With(first, 0)[c])], wire.Perches.Select(p => p.Left));

        bench.Take(SessionRules.Adjust(bench.View, null, asPlanned: true, ""));
        Assert.Equal((planned, default), (bench.Session.OpenTurns, Work(bench).Left));
        Assert.Equal("Turned. Settle the car, hands off, then weigh.", SessionWords.Next(bench.View));
        Assert.Throws<StepRefusedException>(() => SessionRules.Adjust(bench.View, null, asPlanned: true, ""));
    }

    [Fact]
    public void Half_of_a_turn_leaves_the_other_half()
    {
        using var bench = Weighed();
        var planned = Work(bench).Planned;
        var first = Corners.All.ToArray().First(c => planned[c] != 0);
        bench.Turn(default(Corners).With(first, planned[first] / 2));
        Assert.Equal((planned[first] / 2, false), (Work(bench).Left[first], Work(bench).IsReplanned));
    }

    [Theory, InlineData(1), InlineData(-1)]
    public void What_was_done_otherwise_is_planned_anew_from_there_and_still_leads_to_the_target(int way)
    {
        using var bench = Weighed();
        var planned = Work(bench).Planned;
        var first = Corners.All.ToArray().First(c => planned[c] != 0);
        // Too far, or the wrong way.
        bench.Turn(default(Corners).With(first, way * planned[first] + way * 0.5 * Math.Sign(planned[first])));
        var work = Work(bench);
        Assert.True(work.IsReplanned);
        Assert.NotEqual(default, work.Left);
        var shares = Bench.LoadsAfter(work.Done + work.Left);
        Assert.InRange(100 * (shares.RF + shares.LR) / shares.Sum, 49.8, 50.2);
    }

    [Fact]
    public void At_one_corner_the_newest_is_taken_back_first_and_the_others_stay()
    {
        using var bench = Weighed();
        bench.Take(SessionRules.Adjust(bench.View, null, asPlanned: true, ""));
        var planned = bench.Session.OpenTurns;
        var corner = Corners.All.ToArray().First(c => planned[c] != 0);
        bench.Turn(default(Corners).With(corner, 0.125));
        bench.Take(SessionRules.Undo(bench.View, corner));
        Assert.Equal(planned, bench.Session.OpenTurns);
        bench.Take(SessionRules.Undo(bench.View, corner));
        Assert.Equal(planned.With(corner, 0), bench.Session.OpenTurns);
        // The prediction is that of what is left of it, as if it alone had been recorded.
        Assert.Equal(planned.With(corner, 0), bench.Session.Open[^1].Predicted!.Turns);
        Assert.Throws<StepRefusedException>(() => SessionRules.Undo(bench.View, corner));
        var again = bench.Ledger.Find(bench.Session.Id)!;
        Assert.Equal((bench.Session.OpenTurns, bench.Session.Open[^1].Predicted), (again.OpenTurns, again.Open[^1].Predicted));
    }

    private static PerchWork Work(Bench bench) => PerchWork.Of(bench.Session)!;

    private static Bench Weighed()
    {
        var bench = new Bench();
        bench.Prepare();
        bench.Weigh(Bench.FirstLoads);
        return bench;
    }
}
