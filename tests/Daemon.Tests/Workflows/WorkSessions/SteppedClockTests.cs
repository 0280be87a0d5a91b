using Microsoft.Extensions.Time.Testing;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Daemon.Workflows.Levelling;
using ScaleLink.Daemon.Workflows.WorkSessions;

namespace Daemon.Tests.Workflows.WorkSessions;

/// <summary>A laptop's clock is set back between two sessions: what came later stays later.</summary>
public sealed class SteppedClockTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scalelink-clock-");
    private readonly FakeTimeProvider _time = new(new DateTimeOffset(2026, 5, 2, 8, 0, 0, TimeSpan.Zero)) { AutoAdvanceAmount = TimeSpan.Zero };
    private readonly LedgerDatabase _database;

    public SteppedClockTests() => _database = new LedgerDatabase(Path.Combine(_folder.FullName, "ledger.db"));

    [Fact]
    public void The_session_that_was_begun_last_is_the_one_in_the_bay_whatever_the_clock_says()
    {
        var first = Desk(_time).Begin(Bench.Start() with { Title = "first" }, "crew").Session;
        Desk(_time).Take(first.Id, first.Entry, "crew", view => SessionRules.Abandon(view, "rain"));
        var earlier = new FakeTimeProvider(_time.GetUtcNow().AddHours(-2));
        var second = Desk(earlier).Begin(Bench.Start() with { Title = "second" }, "crew").Session;
        Assert.True(second.StartedAt < first.StartedAt);

        Assert.Equal(["first", "second"], new SessionLedger(_database).All().Select(s => s.Start.Title));
        var desk = Desk(_time);
        Assert.Equal((second.Id, second.Entry), (desk.Current!.Session.Id, desk.Current.Session.Entry));
        var after = desk.Take("", second.Entry, "crew", view => SessionRules.EnterHeights(view, new(110, 111, 120, 121))).Session;
        Assert.Equal(4, after.Entry);
        Assert.Equal("SL-565", Assert.Throws<StepRefusedException>(() => Desk(earlier).Take("", second.Entry, "Eve", view => SessionRules.EnterHeights(view, new(1, 1, 1, 1)))).Diagnostic.Code);
    }

    public void Dispose()
    {
        _database.Dispose();
        _folder.Delete(recursive: true);
    }

    // Made anew from the ledger, as after a restart.
    private SessionDesk Desk(TimeProvider time) =>
        new(new SessionLedger(_database), new LiveBay([]), new PatchDesk(_database, BayFile.Parse("bay = \"unit6\"", "bay.toml").Configuration!, time), time, new BayClock(time));
}
