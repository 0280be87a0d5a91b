namespace ScaleLink.Weighing.Cars;

/// <summary>Looks over what a car file says of fuel, drivers and class.</summary>
static class RaceCheck
{
    // From the front axle: nothing that races reaches further.
    const double FurthestMm = 8000;

    public static IEnumerable<Diagnostic> Mistakes(CarModel car) =>
        (car.Fuel is { } tank ? Fuel(tank) : []).Select(m => m with { Where = "fuel" })
            .Concat(Drivers(car.Drivers).Select(m => m with { Where = "drivers" }))
            .Concat((car.Class is { } rule ? Class(rule, car) : []).Select(m => m with { Where = "class minimum" }));

    static IEnumerable<Diagnostic> Fuel(FuelTank tank)
    {
        if (!(IsStated(tank.KgPerLitre) && tank.KgPerLitre.Estimate is >= 0.5 and <= 1.2))
            yield return new(CarCodes.Fuel, $"A litre of fuel is {tank.KgPerLitre.Estimate} kg.", "Give its density in kg per litre, such as 0.745 for petrol, and its uncertainty.");
        foreach (var (name, litres) in new[] { ("as weighed", tank.WeighedLitres), ("at the start", tank.StartLitres), ("at the finish", tank.FinishLitres) })
            if (!(IsStated(litres) && litres.Estimate is >= 0 and <= 1000))
                yield return new(CarCodes.Fuel, $"The tank holds {litres.Estimate} litres {name}.", "Give litres from 0 to 1000, and their uncertainty.");
        if (tank.FinishLitres.Estimate > tank.StartLitres.Estimate)
            yield return new(CarCodes.Fuel, $"The tank holds {tank.FinishLitres.Estimate} litres at the finish and {tank.StartLitres.Estimate} at the start.", "Swap them, or correct one.");
        if (!IsInCar(tank.Place))
            yield return new(CarCodes.Fuel, "The tank is not within the car.", "Give its middle in mm: behind the front axle, left of the centreline, above the ground.");
    }

    static IEnumerable<Diagnostic> Drivers(IReadOnlyList<Driver> drivers)
    {
        foreach (var driver in drivers)
        {
            if (string.IsNullOrWhiteSpace(driver.Name))
                yield return new(CarCodes.Driver, "A driver has no name.", "Give each a name of their own.");
            if (!(IsStated(driver.MassKg) && driver.MassKg.Estimate is >= 20 and <= 250))
                yield return new(CarCodes.Driver, $"The mass of driver {driver.Name} is {driver.MassKg.Estimate} kg.", "Give kg with suit and helmet, 20 to 250, and its uncertainty.");
            if (!IsInCar(driver.Seat))
                yield return new(CarCodes.Driver, $"The seat of driver {driver.Name} is not within the car.", "Give its place in mm: behind the front axle, left of the centreline, above the ground.");
        }

        foreach (var same in drivers.GroupBy(d => d.Name, StringComparer.OrdinalIgnoreCase).Where(g => g.Count() > 1))
            yield return new(CarCodes.Driver, $"Two drivers are called {same.Key}.", "Give each a name of their own.");
        if (drivers.Count(d => d.IsInCar) > 1)
            yield return new(CarCodes.Driver, "More than one driver sits in the car while it is weighed.", "Leave in_car true for the one who does.");
    }

    static IEnumerable<Diagnostic> Class(ClassRule rule, CarModel car)
    {
        if (!(rule.MinimumKg is >= 50 and <= 10_000 && rule.MarginKg is >= 0 and <= 500))
            yield return new(CarCodes.ClassMinimum, $"The class minimum is {rule.MinimumKg} kg with {rule.MarginKg} kg in hand.", "Give 50 to 10000 kg, and 0 to 500 kg in hand.");
        if (rule.Fuel != FuelLevel.AsWeighed && car.Fuel is null)
            yield return new(CarCodes.ClassMinimum, "The class minimum counts fuel that is not the one weighed, and the file states no fuel.", "Add \"fuel\" with place and litres, or leave out which fuel counts: then it is taken as weighed.");
        if (rule.WithDriver && car.Drivers.Count == 0)
            yield return new(CarCodes.ClassMinimum, "The class minimum counts a driver, and the file names none.", "Add \"drivers\", each with mass and seat.");
    }

    static bool IsStated(Stated stated) => double.IsFinite(stated.Estimate) && stated.Value.StandardUncertainty is >= 0 and < double.PositiveInfinity;

    static bool IsInCar(Place place) => Math.Abs(place.X) <= FurthestMm && Math.Abs(place.Y) <= FurthestMm && Math.Abs(place.HeightMm) <= FurthestMm;
}
