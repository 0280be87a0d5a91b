using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Workflows.WorkSessions;
using ScaleLink.Daemon.Workflows.WorkSessions.Checks;
using ScaleLink.Daemon.Workflows.WorkSessions.Service;

namespace Daemon.Tests.Workflows.WorkSessions;

/// <summary>Ticks say what they are: one by one or together, with the number that belongs beside them, and never instead of a reading.</summary>
public class ChecksTests
{
    [Fact]
    public void Ticked_together_is_not_individually_confirmed_and_a_tick_of_its_own_afterwards_is()
    {
        using var bench = new Bench();
        bench.Take(SessionRules.Check(bench.View, "fuel", done: true, skip: false, "32", ""));
        bench.Take(SessionRules.TickRemaining(bench.View));
        Assert.Equal(SessionStage.Baseline, bench.View.Stage);
        var checks = SessionMapping.Session(bench.View).Preparation;
        Assert.All(checks, c => Assert.Equal(c.Key != "fuel", c.TickedTogether));
        Assert.Equal(SessionStage.Baseline, new SessionView(bench.Ledger.Find(bench.Session.Id)!, new([])).Stage);

        Assert.Equal("SL-562", Refused(() => SessionRules.TickRemaining(bench.View)).Code.Text);
        bench.Take(SessionRules.Check(bench.View, "tyre_pressures", done: true, skip: false, "1.5 1.5 1.4 1.4", ""));
        Assert.False(SessionMapping.Session(bench.View).Preparation.Single(c => c.Key == "tyre_pressures").TickedTogether);
    }

    [Fact]
    public void What_the_bay_sees_otherwise_is_not_ticked_with_the_rest()
    {
        using var bench = new Bench();
        var view = bench.View with { Facts = new([new("pads_proved", false, "", [new(SessionCodes.PadsNotCalibrated, "Not calibrated with known masses: RR.", "Calibrate them.")])]) };
        Assert.DoesNotContain("pads_proved", SessionRules.TickRemaining(view).Keys);
        bench.Take(SessionRules.TickRemaining(view));
        view = bench.View with { Facts = view.Facts };
        Assert.Contains("pads calibrated", Refused(() => SessionRules.TickRemaining(view)).Message.ToString());
    }

    [Fact]
    public void A_value_that_was_entered_is_shown_at_the_next_session()
    {
        using var bench = new Bench(Bench.Start() with { LastValues = new Dictionary<string, string> { ["fuel"] = "32" } });
        var fuel = SessionMapping.Session(bench.View).Preparation.Single(c => c.Key == "fuel");
        Assert.Equal(("litres", "32"), (fuel.Asks, fuel.LastValue));
        Assert.Equal("32", bench.Ledger.Find(bench.Session.Id)!.Start.LastValues!["fuel"]);
        Assert.Equal("", SessionMapping.Session(bench.View).Preparation.Single(c => c.Key == "patch_level").Asks);
    }

    [Fact]
    public void Bars_that_are_connected_again_are_weighed_before_anything_else_and_no_tick_stands_for_it()
    {
        using var bench = new Bench();
        bench.Prepare();
        bench.Weigh(Bench.FirstLoads);
        bench.Take(SessionRules.Adjust(bench.View, null, asPlanned: true, ""));
        var there = Bench.LoadsAfter(bench.Session.OpenTurns);
        bench.Weigh(there);
        while (bench.View.SettlesAskedFor > 0)
            bench.Weigh(there);
        Assert.False(bench.View.IsReadingNext);
        Assert.Equal(["lock_rings", "bump_and_droop", "alignment"], SessionRules.TickRemaining(bench.View).Keys);
        Assert.Equal("SL-562", Refused(() => SessionRules.Check(bench.View, CheckLists.BarsVerified, done: true, skip: false, "", "")).Code.Text);

        bench.Take(SessionRules.Check(bench.View, CheckLists.BarsAgain, done: true, skip: false, "", ""));
        Assert.True(bench.View.IsReadingNext);
        Assert.Contains("weigh once more", SessionMapping.Session(bench.View).Next);
        bench.Weigh(there);
        Assert.False(bench.View.IsReadingNext);
        Assert.True(bench.View.LastSteps.Single(c => c.Item.Key == CheckLists.BarsVerified).IsDone);
        bench.Take(SessionRules.TickRemaining(bench.View));
        Assert.Equal("Finish the session.", SessionMapping.Session(bench.View).Next);
    }

    private static Diagnostic Refused(Action step) => Assert.Throws<StepRefusedException>(step).Diagnostic;
}
