namespace ScaleLink.Weighing.Cars;

/// <summary>One stated number of a car, with the way to change it.</summary>
/// <param name="Name">For people, with the corner.</param>
/// <param name="Value">As stated.</param>
/// <param name="Kind">Which rules it must obey.</param>
/// <param name="Moved">The car if the number were larger by so much.</param>
sealed record NamedValue(string Name, Stated Value, ValueKind Kind, Func<double, CarModel> Moved);

enum ValueKind { Length, SpringRate, TyreRate, BarRate, MotionRatio, Pitch, Height }

/// <summary>Every stated number of a car in one list, for checking and for propagating uncertainty.</summary>
static class NamedValues
{
    public static IEnumerable<NamedValue> Of(CarModel car)
    {
        yield return new("wheelbase", car.WheelbaseMm, ValueKind.Length, by => car with { WheelbaseMm = car.WheelbaseMm.Moved(by) });
        yield return new("front track", car.FrontTrackMm, ValueKind.Length, by => car with { FrontTrackMm = car.FrontTrackMm.Moved(by) });
        yield return new("rear track", car.RearTrackMm, ValueKind.Length, by => car with { RearTrackMm = car.RearTrackMm.Moved(by) });
        foreach (var corner in Corners.All.ToArray())
            foreach (var value in At(car, corner))
                yield return value;
        if (car.FrontBar is { } front)
            yield return new("front bar rate", front.RateNPerMm, ValueKind.BarRate,
                by => car with { FrontBar = front with { RateNPerMm = front.RateNPerMm.Moved(by) } });
        if (car.RearBar is { } rear)
            yield return new("rear bar rate", rear.RateNPerMm, ValueKind.BarRate,
                by => car with { RearBar = rear with { RateNPerMm = rear.RateNPerMm.Moved(by) } });
        yield return new("centre of gravity height", car.CgHeightMm, ValueKind.Height, by => car with { CgHeightMm = car.CgHeightMm.Moved(by) });
        yield return new("roll axis height", car.RollAxisHeightMm, ValueKind.Height, by => car with { RollAxisHeightMm = car.RollAxisHeightMm.Moved(by) });
    }

    static IEnumerable<NamedValue> At(CarModel car, Corner corner)
    {
        var setup = car.Suspension[corner];
        yield return new($"{corner} spring rate", setup.SpringRateNPerMm, ValueKind.SpringRate,
            by => car.Change(corner, s => s with { SpringRateNPerMm = s.SpringRateNPerMm.Moved(by) }));
        yield return new($"{corner} motion ratio", setup.MotionRatio, ValueKind.MotionRatio,
            by => car.Change(corner, s => s with { MotionRatio = s.MotionRatio.Moved(by) }));
        yield return new($"{corner} tyre rate", setup.TyreRateNPerMm, ValueKind.TyreRate,
            by => car.Change(corner, s => s with { TyreRateNPerMm = s.TyreRateNPerMm.Moved(by) }));
        yield return new($"{corner} perch pitch", setup.Perch.PitchMmPerTurn, ValueKind.Pitch,
            by => car.Change(corner, s => s with { Perch = s.Perch with { PitchMmPerTurn = s.Perch.PitchMmPerTurn.Moved(by) } }));
    }
}
