namespace ScaleLink.Weighing.Cars;

/// <summary>Looks a car model over and lists every mistake at once.</summary>
static class CarModelCheck
{
    /// <summary>All mistakes; empty when the model can be used.</summary>
    public static IReadOnlyList<Diagnostic> Mistakes(CarModel car)
    {
        List<Diagnostic> found = [];
        if (string.IsNullOrWhiteSpace(car.Name))
            found.Add(new(CarCodes.NameMissing, "The car has no name.", "Name it, so that records can be told apart.") { Where = "name" });
        foreach (var value in NamedValues.Of(car))
            found.AddRange(Mistakes(value).Select(m => m with { Where = value.Name }));
        foreach (var corner in Corners.All)
            found.AddRange(PerchMistakes(car, corner).Select(m => m with { Where = $"{corner} perch" }));
        if (car.SmallestTurn is not (> 0 and <= 1))
            found.Add(new(CarCodes.PerchPitch, $"The smallest turn is {car.SmallestTurn}.", "Give a part of one turn: 0.125, 0.25 or 0.5.") { Where = "smallest turn" });
        if (!(car.SharedSpringUncertainty is >= 0 and < 1 && car.SharedTyreUncertainty is >= 0 and < 1))
            found.Add(new(CarCodes.Uncertainty, "A shared uncertainty of the rates is not between 0 and 1.", "Give it as a share of one: 0.1 is ten percent."));
        found.AddRange(TargetMistakes(car.Targets).Select(m => m with { Where = "targets" }));
        found.AddRange(BallastMistakes(car.BallastStations).Select(m => m with { Where = "ballast" }));
        found.AddRange(RaceCheck.Mistakes(car));
        found.AddRange(CarSheet.Mistakes(car));
        found.AddRange(MarkCheck.Mistakes(car));
        return found;
    }

    /// <summary>Gives the car back, or throws with every mistake in it.</summary>
    /// <exception cref="DiagnosticException">The model has mistakes.</exception>
    public static CarModel Checked(this CarModel car) =>
        Mistakes(car) is { Count: > 0 } mistakes ? throw new DiagnosticException(mistakes) : car;

    static IEnumerable<Diagnostic> Mistakes(NamedValue value)
    {
        var (low, high, unit, code) = Range(value.Kind);
        if (!(value.Value.Estimate >= low && value.Value.Estimate <= high))
            yield return new(code, $"The {value.Name} is {value.Value.Estimate} {unit}.", $"Expected {low} to {high} {unit}: check the number and its unit.");
        if (!(value.Value.StandardUncertainty >= 0 && double.IsFinite(value.Value.StandardUncertainty)))
            yield return new(CarCodes.Uncertainty, $"The standard uncertainty of the {value.Name} is {value.Value.StandardUncertainty}.",
                "Give zero or more; where nobody knows the value, mark it as a guess with a wide one.");
        else if (value.Value.Assumed && value.Value.StandardUncertainty == 0)
            yield return new(CarCodes.Uncertainty, $"The {value.Name} is marked as a guess but claims no uncertainty.",
                "Give the guess a wide standard uncertainty.");
    }

    // Wide enough for anything on four wheels, narrow enough to catch lb/in typed as N/mm or inches as mm.
    static (double Low, double High, string Unit, Code Code) Range(ValueKind kind) => kind switch
    {
        ValueKind.Length => (500, 6000, "mm", CarCodes.Geometry),
        ValueKind.SpringRate => (5, 1000, "N/mm", CarCodes.Rate),
        ValueKind.TyreRate => (30, 2000, "N/mm", CarCodes.Rate),
        ValueKind.BarRate => (0, 1000, "N/mm", CarCodes.Rate),
        ValueKind.MotionRatio => (0.1, 2, "(spring travel / wheel travel)", CarCodes.MotionRatio),
        ValueKind.Pitch => (0.2, 10, "mm a turn", CarCodes.PerchPitch),
        ValueKind.Height => (-200, 1500, "mm", CarCodes.Height),
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };

    static IEnumerable<Diagnostic> PerchMistakes(CarModel car, Corner corner)
    {
        var setup = car.Suspension[corner];
        if (!(setup.Perch.UpTurnsLeft >= 0 && setup.Perch.DownTurnsLeft >= 0))
            yield return new(CarCodes.ThreadRange, $"The {corner} perch has {setup.Perch.UpTurnsLeft} turns left up and {setup.Perch.DownTurnsLeft} down.",
                "Count the thread left both ways, both as numbers of zero or more.");
        if (setup.LowestRideHeightMm > setup.HighestRideHeightMm)
            yield return new(CarCodes.Height, $"The lowest ride height at {corner}, {setup.LowestRideHeightMm} mm, is above the highest, {setup.HighestRideHeightMm} mm.",
                "Swap them, or leave out the one that does not apply.");
    }

    static IEnumerable<Diagnostic> TargetMistakes(CarTargets targets)
    {
        if (targets.CrossWeightPercent is not (>= 30 and <= 70))
            yield return new(CarCodes.Target, $"The cross weight target is {targets.CrossWeightPercent} %.", "Give (RF + LR) / total in percent, 30 to 70.");
        if (!(targets.CrossWeightTolerancePercent is > 0 and <= 10 && targets.RideHeightToleranceMm is > 0 and <= 100 && targets.RakeToleranceMm is null or (> 0 and <= 100)))
            yield return new(CarCodes.Target, "A tolerance is not usable.", "Give more than 0: up to 10 % of cross weight, up to 100 mm of ride height.");
    }

    static IEnumerable<Diagnostic> BallastMistakes(IReadOnlyList<BallastStation> stations)
    {
        foreach (var station in stations)
            if (!(station.FittedKg >= 0 && station.CapacityKg >= station.FittedKg))
                yield return new(CarCodes.Ballast, $"Ballast station {station.Name} holds {station.FittedKg} kg of {station.CapacityKg} kg.",
                    "Give what is fitted, zero or more, and a capacity not below it.");
        foreach (var name in stations.GroupBy(s => s.Name, StringComparer.OrdinalIgnoreCase).Where(g => g.Count() > 1))
            yield return new(CarCodes.Ballast, $"Two ballast stations are called {name.Key}.", "Give each its own name.");
    }
}
