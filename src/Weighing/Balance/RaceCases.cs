using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Statics;

namespace ScaleLink.Weighing.Balance;

/// <summary>The car as it races: one driver, one level of the tank.</summary>
/// <param name="Fuel">How full the tank is.</param>
/// <param name="Driver">Who drives. Null: whoever is in the car as weighed.</param>
/// <param name="Loads">The four loads then and what they say together.</param>
/// <param name="Trades">What each aim of the perches costs the others then.</param>
sealed record RaceCase(FuelLevel Fuel, string? Driver, LoadSummary Loads, IReadOnlyList<BalanceTrade> Trades);

/// <summary>The states that a car file speaks of, each from the loads as they are by mass put in and taken out.</summary>
static class RaceCases
{
    // No driver is meant.
    static readonly IReadOnlyList<Driver?> Nobody = [null];

    /// <summary>Start and finish with each driver. Empty when the car file states neither fuel nor drivers.</summary>
    /// <param name="statics">The car.</param>
    /// <param name="weighed">As weighed.</param>
    /// <param name="crossWeightTarget">Percent.</param>
    /// <exception cref="DiagnosticException">A wheel would carry nothing, or the target is none.</exception>
    public static IReadOnlyList<RaceCase> Of(CarStatics statics, LoadSummary weighed, double crossWeightTarget)
    {
        var car = statics.Car;
        if (car.Fuel is null && car.Drivers.Count == 0)
            return [];
        FuelLevel[] levels = car.Fuel is null ? [FuelLevel.AsWeighed] : [FuelLevel.Start, FuelLevel.Finish];
        return [.. (car.Drivers.Count == 0 ? Nobody : car.Drivers).SelectMany(_ => levels, (driver, level) => (driver, level)).Select(state =>
        {
            var loads = State(car, state.level, state.driver).Loads(statics, weighed);
            return new RaceCase(state.level, state.driver?.Name, loads, BalanceTrade.All(loads.Loads, statics.Contacts, crossWeightTarget));
        })];
    }

    /// <summary>The states that the class weighs: its fuel, and each driver or none.</summary>
    public static IReadOnlyList<LoadCase> Counted(CarModel car, ClassRule rule) =>
        [.. (rule.WithDriver ? car.Drivers : Nobody).Select(driver => State(car, rule.Fuel, driver))];

    static LoadCase State(CarModel car, FuelLevel level, Driver? driver)
    {
        MassChange[] changes = [.. Fuel(car.Fuel, level), .. Seat(car.Drivers, driver)];
        var words = new[] { Word(level), driver?.Name ?? (car.Drivers.Any(d => d.IsInCar) ? "no driver" : "") }.Where(w => w.Length > 0);
        var name = string.Join(", ", words);
        return new(name.Length > 0 ? name : "as weighed", changes);
    }

    // Litres more than were weighed: density and both fillings are uncertain (GUM, JCGM 100:2008, 5.1.2).
    static IEnumerable<MassChange> Fuel(FuelTank? tank, FuelLevel level)
    {
        if (tank is null || level == FuelLevel.AsWeighed)
            yield break;
        var litres = level switch { FuelLevel.Start => tank.StartLitres, FuelLevel.Finish => tank.FinishLitres, _ => Stated.Exactly(0) };
        var (more, density) = (litres.Estimate - tank.WeighedLitres.Estimate, tank.KgPerLitre);
        var ofLitres = density.Estimate * Math.Sqrt(Square(litres.StandardUncertainty) + Square(tank.WeighedLitres.StandardUncertainty));
        yield return new("fuel", density.Estimate * more, tank.Place, Math.Sqrt(Square(ofLitres) + Square(more * density.StandardUncertainty)));
    }

    static IEnumerable<MassChange> Seat(IReadOnlyList<Driver> drivers, Driver? driver)
    {
        var inCar = drivers.FirstOrDefault(d => d.IsInCar);
        if (inCar == driver)
            yield break;
        if (inCar is not null)
            yield return new(inCar.Name, -inCar.MassKg.Estimate, inCar.Seat, inCar.MassKg.StandardUncertainty);
        if (driver is not null)
            yield return new(driver.Name, driver.MassKg.Estimate, driver.Seat, driver.MassKg.StandardUncertainty);
    }

    static string Word(FuelLevel level) => level switch
    {
        FuelLevel.Start => "start",
        FuelLevel.Finish => "finish",
        FuelLevel.Empty => "empty tank",
        _ => "",
    };

    static double Square(double value) => value * value;
}
