using Daemon.Tests.Workflows.WorkSessions;
using ScaleLink.Daemon.Workflows.SetupSheets;
using ScaleLink.Daemon.Workflows.WorkSessions;
using ScaleLink.Measure;

namespace Daemon.Tests.Workflows.SetupSheets;

/// <summary>What is on the car: the sheet and the turns on record since, weighed or not, put right or taken back.</summary>
public sealed class SheetNowTests : IDisposable
{
    private readonly SheetBench _bench = new();

    private SheetNow Now => SheetNow.Of(_bench.Again().State.OnCar.GetValueOrDefault("Heron"), "Heron", _bench.Work.Ledger);

    [Fact]
    public void Nobody_has_said_anything_yet() => Assert.Equal((null, default, null), (Now.Fitted, Now.TurnsSince, Now.PerchTurns));

    [Fact]
    public void Turns_before_the_sheet_are_in_it_and_turns_since_are_told_until_the_next()
    {
        var work = _bench.Work;
        work.Prepare();
        work.Weigh(Bench.FirstLoads);
        work.Turn(new(1, 0, 0, 0));
        _bench.Save(SheetBench.Moor, 0, "crew", ("springs.perch_turns.all", "2"));
        Assert.Equal(default, Now.TurnsSince);

        // Recorded and not weighed yet; then weighed together with the turn that the sheet already has.
        work.Turn(new(0, 0.5, 0, 0));
        Assert.Equal(new Corners(0, 0.5, 0, 0), Now.TurnsSince);
        work.Weigh(Bench.LoadsAfter(new(1, 0.5, 0, 0)));
        Assert.Equal(new Corners(0, 0.5, 0, 0), Now.TurnsSince);
        Assert.Equal(new Corners(2, 2.5, 2, 2), Now.PerchTurns);

        _bench.Desk.Save(SheetBench.Moor, 1, SheetBench.Draft(("springs.perch_turns.RF", "2.5")), "crew");
        Assert.Equal(default, Now.TurnsSince);
        _bench.Desk.Fit(SheetBench.Moor, 1, "crew");
        Assert.Equal((1, default), (Now.Fitted!.Sheet.Version, Now.TurnsSince));
    }

    [Fact]
    public void Turns_that_are_put_right_or_taken_back_count_as_they_are_by_then()
    {
        var work = _bench.Work;
        _bench.Save(SheetBench.Moor, 0, "crew", ("fuel.fill", "25"));
        work.Prepare();
        work.Weigh(Bench.FirstLoads);
        work.Turn(new(-1.5, 0, 0, 0));
        work.Weigh(Bench.LoadsAfter(new(1.5, 0, 0, 0)));
        Assert.Equal(new Corners(-1.5, 0, 0, 0), Now.TurnsSince);
        work.Take(SessionRules.Correct(work.View, 1, new(1.5, 0, 0, 0)));
        Assert.Equal(new Corners(1.5, 0, 0, 0), Now.TurnsSince);
        work.Turn(new(0, 0, 1, 0));
        work.Take(SessionRules.Undo(work.View, null));
        Assert.Equal(new Corners(1.5, 0, 0, 0), Now.TurnsSince);
        work.Take(SessionRules.Abandon(work.View, "enough"));
        Assert.Equal(new Corners(1.5, 0, 0, 0), Now.TurnsSince);
        Assert.Null(Now.PerchTurns);
    }

    [Fact]
    public void Heights_measured_since_are_told()
    {
        _bench.Save(SheetBench.Moor, 0, "crew", ("heights.ride_height.all", "90"));
        _bench.Work.Take(SessionRules.EnterHeights(_bench.Work.View, new(91, 90, 95, 95.5)));
        Assert.Contains("LF 91.0 mm, RF 90.0 mm, LR 95.0 mm, RR 95.5 mm", Assert.Single(Now.Remarks).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Ride_heights_are_carried_on_by_turns_and_by_heights_measured_since()
    {
        var work = _bench.Work;
        _bench.Save(SheetBench.Moor, 0, "crew", ("heights.ride_height.all", "90"));
        Assert.Null(Now.HeightsMm);
        work.Prepare();
        work.Weigh(Bench.FirstLoads);
        work.Turn(new(2, 0, 0, 0));
        var raised = Now.HeightsMm!.Value - Corners.Same(90);
        // As the session itself foresees.
        var foreseen = work.Session.Known!.Effects.HeightsPerTurn * new Corners(2, 0, 0, 0);
        Assert.Equal(foreseen.LF, raised.LF, 1e-9);
        Assert.Equal(foreseen.RR, raised.RR, 1e-9);
        Assert.True(raised.LF > 1);
        work.Weigh(Bench.LoadsAfter(new(2, 0, 0, 0)));
        work.Take(SessionRules.EnterHeights(work.View, new(93, 91, 90, 89)));
        Assert.Equal(new Corners(93, 91, 90, 89), Now.HeightsMm);
    }

    [Fact]
    public void Turns_on_another_car_are_not_on_this_one()
    {
        var text = Bench.CarText.Replace("\"Heron\"", "\"Wader\"", StringComparison.Ordinal);
        _bench.Cars.Save(text, "crew");
        _bench.Desk.Save(new("Wader", "", ""), 0, SheetDraft.Of([("fuel.fill", "20")], "", "Wader", Units.Metric, "", onCar: true), "crew");
        _bench.Work.Prepare();
        _bench.Work.Weigh(Bench.FirstLoads);
        _bench.Work.Turn(new(1, 0, 0, 0));
        Assert.Equal(default, SheetNow.Of(_bench.Again().State.OnCar["Wader"], "Wader", _bench.Work.Ledger).TurnsSince);
    }

    public void Dispose() => _bench.Dispose();
}
