namespace ScaleLink.Weighing.Calibration;

/// <summary>What a proof says of a pad's errors beyond the curve, for the budget.</summary>
static class ProofErrors
{
    public static ErrorSources Of(ProofInput input, CurveFit curve, PadCharacteristics found) => input.Before.Errors with
    {
        ResolutionCounts = input.ResolutionCounts,
        BuoyancyRelative = input.Points.SelectMany(p => p.Load.Masses).Distinct()
            .Select(label => AirBuoyancy.RelativeLimit(input.Masses[label])).DefaultIfEmpty(0).Max(),
        ZeroReturnKg = found.ZeroReturnKg is { } back ? Math.Abs(back) : null,
        HysteresisKg = found.Hysteresis is { } loop ? Math.Abs(loop.Kg) : null,
        HysteresisAtKg = found.Hysteresis?.LoadKg ?? 0,
        CurveFollowsWayUp = found.Hysteresis is null,
        RepeatabilitySdKg = curve.RepeatSdKg,
        RepeatabilityDegreesOfFreedom = curve.RepeatSdKg is null ? double.PositiveInfinity : curve.RepeatDegreesOfFreedom,
        CreepRelative = input.Creep is { } creep ? Math.Abs(creep.After30MinKg) / creep.LoadKg : null,
        LinearityKg = Math.Max(curve.DoubtfulBowKg, LeftOver(input, curve, found)),
        PositionRelative = Position(input),
        SpanPerKelvin = input.SpanPerKelvin ?? input.Before.Errors.SpanPerKelvin,
    };

    // Repeats that contradict the curve show that the means of the levels are off by more than scatter.
    static double LeftOver(ProofInput input, CurveFit curve, PadCharacteristics found) =>
        curve.Choice.LackOfFit is { Chance: < Statistics.ModelChoice.LackOfFitChance }
            ? found.Levels.Where(l => !l.Load.IsEmpty).Max(level => Math.Abs(input.Points.Zip(curve.ResidualsKg)
                .Where(point => point.First.Load == level.Load).Average(point => point.Second)))
            : 0;

    // Trims that were fitted exactly show nothing about the places between.
    static double? Position(ProofInput input) => input.Trims is { SparePlaces: > 0 } trims && input.TrimLoadKg > 0
        ? 0.5 * trims.AfterKg / input.TrimLoadKg
        : input.Before.Errors.PositionRelative;
}
