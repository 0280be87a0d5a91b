using ScaleLink.Daemon.Contract;
using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Cars;

using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.Cars;

/// <summary>Fuel, drivers and class in the words of the public API.</summary>
internal static class RaceMapping
{
    public static Wire.ClassRule Rule(ClassRule rule) => new() { MinimumKg = rule.MinimumKg, MarginKg = rule.MarginKg, WithDriver = rule.WithDriver, Fuel = Level(rule.Fuel) };

    public static Wire.FuelTank Fuel(FuelTank tank) => new()
    {
        Place = Place(tank.Place),
        KgPerLitre = tank.KgPerLitre.Value.ToWire(),
        WeighedLitres = tank.WeighedLitres.Value.ToWire(),
        StartLitres = tank.StartLitres.Value.ToWire(),
        FinishLitres = tank.FinishLitres.Value.ToWire(),
    };

    public static Wire.Driver Driver(Driver driver) => new() { Name = driver.Name, MassKg = driver.MassKg.Value.ToWire(), Seat = Place(driver.Seat), InCar = driver.IsInCar };

    public static Wire.RaceCase Case(RaceCase state)
    {
        var wire = new Wire.RaceCase { Fuel = Level(state.Fuel), Driver = state.Driver ?? "", Figures = state.Loads.ToWire() };
        wire.Trades.AddRange(state.Trades.Select(CarMapping.Trade));
        return wire;
    }

    public static Wire.ClassStanding Standing(ClassMinimum standing) => new()
    {
        MinimumKg = standing.MinimumKg,
        Lightest = standing.Lightest,
        LightestKg = standing.LightestKg.ToWire(),
        OverKg = standing.MarginKg,
        GuardKg = standing.GuardKg,
        MissingKg = standing.MissingKg,
        SpareKg = standing.SpareKg,
    };

    private static Wire.FuelLevel Level(FuelLevel level) => level switch
    {
        FuelLevel.AsWeighed => Wire.FuelLevel.AsWeighed,
        FuelLevel.Start => Wire.FuelLevel.Start,
        FuelLevel.Finish => Wire.FuelLevel.Finish,
        FuelLevel.Empty => Wire.FuelLevel.Empty,
        _ => Wire.FuelLevel.Unspecified,
    };

    private static Wire.CarPlace Place(Place place) => new() { BehindFrontAxleMm = place.BehindFrontAxleMm, LeftOfCentreMm = place.LeftOfCentreMm, HeightMm = place.HeightMm };
}
