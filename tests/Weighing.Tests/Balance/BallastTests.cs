using ScaleLink.Measure;
using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Statics;
using Weighing.Tests.Cars;
using Weighing.Tests.Statics;

namespace Weighing.Tests.Balance;

public class BallastTests
{
    static readonly CarStatics Statics = new(Heron.Car, Heron.TotalKg);

    [Fact]
    public void Ways_reach_the_share_or_say_how_far_they_get()
    {
        var ways = BallastMove.Ways(Statics, Heron.Loads, BallastGoal.LeftSideWeight, 50);

        Assert.NotEmpty(ways);
        Assert.All(ways.Where(w => w.Reaches), w => Assert.Equal(50, w.SharePercent, 1e-6));
        Assert.All(ways, w => Assert.InRange(w.SharePercent, 49.9, 50.1));
        var lightest = ways[0];
        Assert.True(lightest is { Reaches: true, To: "passenger floor" } or { From: "battery box" });
        Assert.Equal(lightest.TotalChangeKg, lightest.LoadsKg.Sum - Heron.Loads.Sum, 1e-9);
    }

    [Fact]
    public void What_a_station_cannot_hold_is_not_promised()
    {
        var ways = BallastMove.Ways(Statics, Heron.Loads, BallastGoal.FrontWeight, 60);

        Assert.All(ways, w => Assert.False(w.Reaches));
        Assert.All(ways.Where(w => w.From == "battery box"), w => Assert.Equal(5, w.MassKg, 1e-9));
        Assert.All(ways, w => Assert.True(w.SharePercent > 100 * 556.0 / 1048));
    }

    [Fact]
    public void Ballast_moves_a_least_energy_car_as_predicted()
    {
        var random = new Random(7901);
        for (var i = 0; i < 30; i++)
        {
            var car = RandomCars.Next(random, bars: false);
            var statics = new CarStatics(RandomCars.ModelOf(car) with { BallastStations = [new("floor", new(1200, 400, 150), 0, 60)] }, car.TotalKg);
            var loads = car.Rest().Loads;
            var target = Patterns(loads) + 0.5;

            var way = Assert.Single(BallastMove.Ways(statics, loads, BallastGoal.LeftSideWeight, target));

            var after = (car with { Sprung = [.. car.Sprung, (way.MassKg, -1200, 400, 150)] }).Rest().Loads;
            Assert.True(way.Reaches);
            Assert.Equal(target, Patterns(after), 0.01);
        }

        static double Patterns(Corners l) => 100 * (l.LF + l.LR) / l.Sum;
    }

    [Fact]
    public void Mass_adds_to_both_diagonals_alike_where_rates_are_equal()
    {
        var change = new CarStatics(PlainCar.With(Corners.Same(50)), 1000).FromMass(20, new(2200, 600));

        Assert.Equal(10, change.RF + change.LR, 1e-9);
        Assert.True(change.LR > 13);
    }

    [Fact]
    public void Drivers_and_fuel_make_cases_and_the_lightest_counts()
    {
        var weighed = new LoadSummary(Heron.Loads, CornerMatrix.Diagonal(Corners.Same(0.04)));
        LoadCase finish = new("light driver, finish", new("driver", -12, new(1350, 360, 300)), new MassChange("fuel", -25, new(2300, 0, 350)));
        LoadCase start = new("start", new MassChange("fuel", 20, new(2300, 0, 350)));

        var verdict = ClassMinimum.Of(Statics, weighed, minimumKg: 1012, marginKg: 2, [start, finish]);

        Assert.Equal("light driver, finish", verdict.Lightest);
        Assert.Equal(1011, verdict.LightestKg.Estimate, 1e-9);
        Assert.Equal(-1, verdict.MarginKg, 1e-9);
        Assert.Equal(2 + 1.96 * 0.4, verdict.GuardKg, 1e-3);
        Assert.Equal(verdict.GuardKg + 1, verdict.MissingKg, 1e-9);
        Assert.Equal(0, verdict.SpareKg);
        Assert.True(start.Loads(Statics, weighed).FrontWeightPercent.Estimate < weighed.FrontWeightPercent.Estimate);
        Assert.True(ClassMinimum.Of(Statics, weighed, 1000, 2, [finish]).SpareKg > 8);
    }
}
