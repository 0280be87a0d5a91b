using ScaleLink.Weighing.Cars;

namespace ScaleLink.Weighing.Statics;

/// <summary>
/// How far body and pad come together at each wheel under load, bars included. Rates are per newton, loads are kg,
/// so local gravity enters here and nowhere else.
/// </summary>
/// <param name="MmPerKg">Compression at a wheel (row) for a load at a wheel (column), mm/kg.</param>
/// <param name="LiftMmPerTurn">
/// How far one turn of a perch (column) would lift the body at a wheel (row) with all loads held, mm. On an axle with its
/// bar connected part of the turn only winds the bar, and the other wheel moves too.
/// </param>
sealed record Compliance(CornerMatrix MmPerKg, CornerMatrix LiftMmPerTurn)
{
    /// <summary>That of a car.</summary>
    /// <param name="car">A model without mistakes.</param>
    /// <param name="gravity">Local gravity, m/s².</param>
    public static Compliance Of(CarModel car, double gravity)
    {
        var ratio = car.Suspension.Map(s => s.MotionRatio.Estimate);
        var wheelRate = Corners.From(c => car.Suspension[c].SpringRateNPerMm.Estimate * ratio[c] * ratio[c]);
        var perchTravel = Corners.From(c => car.Suspension[c].Perch.PitchMmPerTurn.Estimate / ratio[c]);
        var springs = CornerMatrix.Diagonal(wheelRate);
        var suspension = (springs + Bars(car)).Inverse();
        var tyres = CornerMatrix.Diagonal(car.Suspension.Map(s => 1 / s.TyreRateNPerMm.Estimate));
        return new(gravity * (tyres + suspension), suspension * springs * CornerMatrix.Diagonal(perchTravel));
    }

    static CornerMatrix Bars(CarModel car)
    {
        double front = RateInUse(car.FrontBar), rear = RateInUse(car.RearBar);
        return new(new(front, -front, 0, 0), new(-front, front, 0, 0), new(0, 0, rear, -rear), new(0, 0, -rear, rear));
    }

    static double RateInUse(AntiRollBar? bar) => bar is { Connected: true } ? bar.RateNPerMm.Estimate : 0;
}
