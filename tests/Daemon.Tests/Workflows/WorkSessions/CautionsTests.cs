using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Workflows.WorkSessions;
using ScaleLink.Daemon.Workflows.WorkSessions.Export;
using ScaleLink.Daemon.Workflows.WorkSessions.Service;
using ScaleLink.Daemon.Workflows.WorkSessions.Steps;

namespace Daemon.Tests.Workflows.WorkSessions;

/// <summary>Cautions are read once by each name; that is on record, and stays through a restart and whatever is put right later.</summary>
public class CautionsTests
{
    [Fact]
    public void Who_has_read_them_is_on_record_once_and_on_the_sheet()
    {
        using var bench = new Bench();
        Assert.NotEmpty(SessionMapping.Session(bench.View).SessionCautions);
        bench.Take(SessionRules.ReadCautions(bench.View, "crew"));
        var session = SessionMapping.Session(bench.View);
        Assert.True(session.HasRead(" CREW "));
        Assert.False(session.HasRead("somebody else"));
        Assert.Equal("SL-562", Assert.Throws<StepRefusedException>(() => SessionRules.ReadCautions(bench.View, "CREW")).Diagnostic.Code.Text);
        Assert.IsType<CautionsRead>(SessionRules.ReadCautions(bench.View, "somebody else"));
        Assert.True(bench.Ledger.Find(bench.Session.Id)!.Cautioned.ContainsKey("crew"));
        Assert.Contains("Cautions read by crew", SessionSheet.Of(bench.View));
    }

    [Fact]
    public void A_turn_that_is_put_right_leaves_it_read()
    {
        using var bench = new Bench();
        bench.Prepare();
        bench.Take(SessionRules.ReadCautions(bench.View, "crew"));
        bench.Weigh(Bench.FirstLoads);
        bench.Turn(new(1, 0, 0, 0));
        bench.Weigh(Bench.LoadsAfter(new(1, 0, 0, 0)));
        bench.Take(SessionRules.Correct(bench.View, 1, new(1.25, 0, 0, 0)));
        Assert.True(SessionMapping.Session(bench.View).HasRead("crew"));
    }
}
