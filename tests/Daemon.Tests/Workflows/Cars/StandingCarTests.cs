using Daemon.Tests.Workflows.WorkSessions;
using Microsoft.Extensions.Time.Testing;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Daemon.Workflows.Cars;
using ScaleLink.Daemon.Workflows.Levelling;
using ScaleLink.Daemon.Workflows.WorkSessions;
using Shared;

namespace Daemon.Tests.Workflows.Cars;

/// <summary>The car that weigher and patch reckon with, while a session takes its bars off and puts them back.</summary>
public sealed class StandingCarTests : IDisposable
{
    // Heron without bars, by hand: wheel rates 70 x 0.85² = 50.575 and 62 x 0.92² = 52.477 N/mm, with 220 N/mm of tyre 41.122 and 42.370 N/mm;
    // p = C n, and n of unequal tracks is in front to rear as 1480 to 1500.
    private const double FrontToRearWithoutBars = 1480.0 / 1500 * 42.370 / 41.122;

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scalelink-standing-");
    private readonly LedgerDatabase _database;
    private readonly CarShelf _cars;
    private readonly SessionDesk _desk;
    private readonly StandingCar _standing;
    private readonly RockingPrior _prior = new(CarRocking.DirectionOf(null));
    private int _changes;

    public StandingCarTests()
    {
        var time = new FakeTimeProvider(new DateTimeOffset(2026, 5, 2, 8, 0, 0, TimeSpan.Zero));
        var bay = BayFile.Parse("bay = \"unit6\"", "bay.toml").Configuration!;
        _database = new LedgerDatabase(Path.Combine(_folder.FullName, "ledger.db"));
        _cars = new CarShelf(_database, bay, time);
        _desk = new SessionDesk(new SessionLedger(_database), new LiveBay([]), new PatchDesk(_database, bay, time), time, new BayClock(time));
        _standing = new StandingCar(_cars);
        _ = new SessionBars(_desk, _standing);
        _ = new CarRocking(_standing, _prior);
        _standing.Changed += () => _changes++;
    }

    public void Dispose()
    {
        _database.Dispose();
        KeptLedgers.Keep(Path.Combine(_folder.FullName, "ledger.db"), _folder.Name);
        _folder.Delete(recursive: true);
    }

    [Fact]
    public void Bars_taken_off_in_a_session_reach_the_rocking_blind_direction_and_come_back()
    {
        var car = _cars.Save(Bench.CarText, "crew");
        _cars.Use(car, "crew");
        var connected = FrontToRear;
        Assert.NotEqual(FrontToRearWithoutBars, connected, 0.01);
        _desk.Begin(Bench.Start() with { CarHash = car.Hash }, "crew");
        Take("fuel", done: true);
        var before = _prior.Direction;
        Take("driver_mass", done: true);
        // Another direction would throw away what bounces have taught.
        Assert.Same(before, _prior.Direction);

        Take("bars_disconnected", done: true);
        Assert.Equal(FrontToRearWithoutBars, FrontToRear, 0.0005);
        Take("bars_disconnected", done: false);
        Assert.Equal(connected, FrontToRear, 1e-9);
        Take("bars_disconnected", done: true);
        Take("bars_connected_again", done: true);
        Assert.Equal(connected, FrontToRear, 1e-9);
        Take("bars_connected_again", done: false);
        Assert.Equal(FrontToRearWithoutBars, FrontToRear, 0.0005);
        _desk.Take("", null, "crew", view => SessionRules.Abandon(view, "enough"));
        Assert.Equal(connected, FrontToRear, 1e-9);
        Assert.Equal(7, _changes);
    }

    [Fact]
    public void A_session_of_another_car_takes_no_bars_off_this_one()
    {
        var car = _cars.Save(Bench.CarText, "crew");
        _cars.Use(car, "crew");
        var connected = FrontToRear;
        _desk.Begin(Bench.Start() with { CarHash = "another" }, "crew");
        Take("bars_disconnected", done: true);
        Assert.Equal(connected, FrontToRear, 1e-9);
        _cars.Use(null, "crew");
        Assert.Null(_standing.Model);
        Assert.Equal(1, FrontToRear, 1e-9);
    }

    private double FrontToRear => Math.Abs(_prior.Direction.Direction.LF / _prior.Direction.Direction.LR);

    private void Take(string check, bool done) => _desk.Take("", null, "crew", view => SessionRules.Check(view, check, done, skip: false, "", ""));
}
