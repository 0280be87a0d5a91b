namespace ScaleLink.Weighing.Balance;

/// <summary>An axle of the car.</summary>
enum Axle
{
    /// <summary>LF and RF.</summary>
    Front,
    /// <summary>LR and RR.</summary>
    Rear,
}

/// <summary>One lift: one axle raised, the other on its pads.</summary>
/// <param name="Lifted">The axle that was raised.</param>
/// <param name="OtherAxleLoadKg">What the axle that stayed on its pads reads then, kg.</param>
/// <param name="AngleDeg">Pitch of the car against level, degrees, as a positive number; from height or inclinometer.</param>
sealed record AxleLift(Axle Lifted, Value OtherAxleLoadKg, Value AngleDeg)
{
    /// <summary>
    /// From an inclinometer on the body: the difference of its readings raised and level, so that its zero does not matter.
    /// </summary>
    public static AxleLift ByInclinometer(Axle lifted, Value otherAxleLoadKg, double levelDeg, double raisedDeg, double readingUncertaintyDeg) =>
        new(lifted, otherAxleLoadKg, new(Math.Abs(raisedDeg - levelDeg), Math.Sqrt(2) * readingUncertaintyDeg));

    /// <summary>
    /// From the height through which the wheel centres of the lifted axle were raised against those of the other axle, mm.
    /// Measure at the hubs: a height taken at the tyres misses what the tyres give.
    /// </summary>
    public static AxleLift ByHeight(Axle lifted, Value otherAxleLoadKg, Value liftMm, AxleLiftSetup setup)
    {
        // The hub line rises from its own small slope (unequal tyres) to that plus the lift; its length does not change.
        var step = setup.RadiusOf(lifted).Estimate - setup.RadiusOf(Other(lifted)).Estimate;
        var length = Math.Sqrt(setup.WheelbaseMm.Estimate * setup.WheelbaseMm.Estimate + step * step);
        var angle = Math.Asin(Math.Clamp((step + liftMm.Estimate) / length, -1, 1)) - Math.Asin(step / length);
        var perMm = 1 / (length * Math.Max(0.1, Math.Cos(angle)));
        var uncertainty = perMm * Math.Sqrt(Math.Pow(liftMm.Uncertainty, 2) + Math.Pow(Math.Sin(angle) * setup.WheelbaseMm.StandardUncertainty, 2));
        return new(lifted, otherAxleLoadKg, new(angle * 180 / Math.PI, uncertainty * 180 / Math.PI));
    }

    /// <summary>The axle that stays on its pads.</summary>
    public static Axle Other(Axle lifted) => lifted == Axle.Front ? Axle.Rear : Axle.Front;
}
