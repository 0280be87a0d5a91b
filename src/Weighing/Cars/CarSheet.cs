using ScaleLink.Weighing.SetupSheets;

namespace ScaleLink.Weighing.Cars;

/// <summary>What a car file says twice over: of the car as plans need it, and on its setup sheet. Both must agree.</summary>
static class CarSheet
{
    // 400 lb/in is written as 70 N/mm by many, which is 0.07 % off; another spring is 5 % off and more.
    const double SameWithin = 0.005;

    static readonly SheetSlot Fill = new("fuel.fill", ""), DriverMass = new("seat.driver_mass", "");

    /// <summary>The setup sheet of a car: what its file states of the car, and what it states of its setup.</summary>
    public static SheetContent Of(CarModel car) => Stated(car).With(car.Setup);

    /// <summary>The car as that sheet sets it up: springs, bars, fuel and ballast that are fitted. Rates keep their uncertainty in percent.</summary>
    public static CarModel SetUp(this CarModel car, SheetContent sheet)
    {
        foreach (var corner in Corners.All)
            if (sheet.Number("springs.rate", $"{corner}") is { } rate)
                car = car.Change(corner, s => s with { SpringRateNPerMm = At(s.SpringRateNPerMm, rate) });
        return car with
        {
            FrontBar = Bar(car.FrontBar, sheet.Number("bars.rate", "front")),
            RearBar = Bar(car.RearBar, sheet.Number("bars.rate", "rear")),
            Fuel = car.Fuel is { } tank && sheet.Number("fuel.fill") is { } litres ? tank with { WeighedLitres = tank.WeighedLitres.Moved(litres - tank.WeighedLitres.Estimate) } : car.Fuel,
            BallastStations = [.. car.BallastStations.Select(b => sheet.Number("ballast.fitted", b.Name) is { } kg ? b with { FittedKg = kg } : b)],
            Setup = sheet,
        };
    }

    /// <summary>Where the two disagree.</summary>
    public static IEnumerable<Diagnostic> Mistakes(CarModel car)
    {
        var stated = Stated(car);
        foreach (var (slot, value) in car.Setup.Values)
            if (slot != DriverMass && stated[slot]?.Number is { } known && value.Number is { } number && Math.Abs(number - known) > SameWithin * Math.Max(Math.Abs(known), 1))
                yield return new(SheetCodes.Contradiction, $"{slot.Words} is {value.Show(slot.Field, Units.Metric)} in the setup and {SheetValue.Of(known).Show(slot.Field, Units.Metric)} in the car.", "Correct one of them, or leave it out of the setup.")
                {
                    Where = $"setup.{slot.Field!.Group}.{slot.Field.DocumentName}",
                };
    }

    static SheetContent Stated(CarModel car)
    {
        var sheet = SheetContent.Empty;
        // What nobody knows is no setting.
        foreach (var corner in Corners.All)
            if (car.Suspension[corner].SpringRateNPerMm is { Assumed: false } rate)
                sheet = sheet.With(new("springs.rate", $"{corner}"), SheetValue.Of(rate.Estimate));
        foreach (var (place, bar) in new[] { ("front", car.FrontBar), ("rear", car.RearBar) })
            if (bar is { RateNPerMm.Assumed: false })
                sheet = sheet.With(new("bars.rate", place), SheetValue.Of(bar.RateNPerMm.Estimate));
        if (car.Fuel is { } tank)
            sheet = sheet.With(Fill, SheetValue.Of(tank.WeighedLitres.Estimate));
        if (car.Drivers.FirstOrDefault(d => d.IsInCar) is { } driver)
            sheet = sheet.With(DriverMass, SheetValue.Of(driver.MassKg.Estimate));
        return car.BallastStations.Aggregate(sheet, (all, b) => all.With(new("ballast.fitted", b.Name), SheetValue.Of(b.FittedKg)));
    }

    static AntiRollBar? Bar(AntiRollBar? bar, double? rate) => bar is { } fitted && rate is { } r ? fitted with { RateNPerMm = At(fitted.RateNPerMm, r) } : bar;

    static Stated At(Stated before, double value) => Math.Abs(value - before.Estimate) <= 1e-9 * value ? before
        : new(value, before.Estimate > 0 ? before.StandardUncertainty / before.Estimate * value : before.StandardUncertainty);
}
