using Microsoft.Extensions.Time.Testing;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Daemon.Workflows.Levelling;
using ScaleLink.Daemon.Workflows.WorkSessions;
using ScaleLink.Daemon.Workflows.WorkSessions.Steps;
using ScaleLink.Measure;
using ScaleLink.Weighing.Cars.Files;
using ScaleLink.Weighing.Statics;
using Shared;

namespace Daemon.Tests.Workflows.WorkSessions;

/// <summary>A session on a bench: a ledger of its own and readings made up from the statics of the documents' car.</summary>
internal sealed class Bench : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scalelink-work-");
    private readonly LedgerDatabase _database;
    private readonly FakeTimeProvider _time = new(new DateTimeOffset(2026, 5, 2, 8, 0, 0, TimeSpan.Zero));
    private readonly SessionDesk _desk;
    private long _rests;

    public Bench()
        : this(Start())
    {
    }

    public Bench(SessionStarted start)
    {
        _database = new LedgerDatabase(Path.Combine(_folder.FullName, "ledger.db"));
        Ledger = new SessionLedger(_database);
        _desk = new SessionDesk(Ledger, new LiveBay([]), new PatchDesk(_database, BayFile.Parse("bay = \"unit6\"", "bay.toml").Configuration!, _time), _time, new BayClock(_time));
        Session = _desk.Begin(start, "crew").Session;
    }

    public static Corners FirstLoads { get; } = new(268, 288, 257, 235);

    public static string CarText { get; } = File.ReadAllText(RepositoryRoot.File("docs", "cars", "heron.json"));

    public LedgerDatabase Database => _database;

    public FakeTimeProvider Time => _time;

    public SessionLedger Ledger { get; }

    public WorkSession Session { get; private set; }

    public SessionView View => new(Session, new BayFacts([]));

    public static SessionStarted Start() =>
        new("unit6", "hash", CarText, "test", 50, 0.2, [], new(SettleMethod.RollAndBounce, 0.1, 3, 0));

    /// <summary>Loads after these turns, bars off, with some more of the warp pattern that moves cross weight by so much, percent.</summary>
    public static Corners LoadsAfter(Corners turns, double repeatabilityPercent = 0)
    {
        var statics = new CarStatics(CarFile.Read(CarText).Car!.WithBars(false), FirstLoads.Sum);
        var warp = statics.FromBuiltInWarp(1);
        return FirstLoads + statics.FromTurns(turns) + repeatabilityPercent * FirstLoads.Sum / 100 / (warp.RF + warp.LR) * warp;
    }

    public RecordedWeighing Reading(Corners loads) => new()
    {
        LoadsKg = loads, RepeatUKg = Corners.Same(0.03), StandingUKg = Corners.Same(0.1), Calibrations = ["a", "b", "c", "d"], NominalOnly = [],
        StartId = "run", Seq = 1, RestSinceNs = ++_rests,
    };

    /// <summary>A reading of another start of the daemon, which did not watch the car come to rest.</summary>
    public RecordedWeighing Unseen(Corners loads) => Reading(loads) with { StartId = "another", RestWasSeen = false };

    public void Take(SessionStep step)
    {
        _time.Advance(TimeSpan.FromMinutes(1));
        Session = _desk.Take(Session.Id, Session.Entry, "crew", _ => step).Session;
    }

    public void Prepare()
    {
        foreach (var check in View.Preparation)
            Take(SessionRules.Check(View, check.Item.Key, done: true, skip: false, "", ""));
    }

    public void Weigh(Corners loads) => Take(SessionRules.Weigh(View, Reading(loads), null, ""));

    public void Turn(Corners turns) => Take(SessionRules.Adjust(View, turns, asPlanned: false, ""));

    public void Dispose()
    {
        _database.Dispose();
        KeptLedgers.Keep(Path.Combine(_folder.FullName, "ledger.db"), _folder.Name);
        _folder.Delete(recursive: true);
    }
}
