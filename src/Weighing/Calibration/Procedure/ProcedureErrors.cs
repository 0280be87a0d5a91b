using ScaleLink.Weighing.Calibration.Fitting;
using ScaleLink.Weighing.Calibration.Masses;
using ScaleLink.Weighing.Calibration.Results;
using ScaleLink.Weighing.Pads;
using ScaleLink.Weighing.Statistics;

namespace ScaleLink.Weighing.Calibration.Procedure;

/// <summary>What a calibration procedure says of a pad's errors beyond the curve, for the budget.</summary>
static class ProcedureErrors
{
    public static ErrorSources Of(ProcedureInput input, CurveFit curve, PadCharacteristics found) => input.Before.Errors with
    {
        ResolutionCounts = input.ResolutionCounts,
        BuoyancyRelative = input.Points.SelectMany(p => p.Load.Masses).Distinct()
            .Select(label => AirBuoyancy.RelativeLimit(input.Masses[label])).DefaultIfEmpty(0).Max(),
        ZeroReturnKg = found.ZeroReturnKg is { } back ? Math.Abs(back) : null,
        HysteresisKg = found.Hysteresis is { } loop ? Math.Abs(loop.Kg) : null,
        HysteresisAtKg = WideOpenAtKg(found),
        CurveFollowsWayUp = found.Hysteresis is null,
        RepeatabilitySdKg = curve.RepeatSdKg,
        RepeatabilityDegreesOfFreedom = curve.RepeatSdKg is null ? double.PositiveInfinity : curve.RepeatDegreesOfFreedom,
        CreepRelative = input.Creep is { } creep ? Math.Abs(creep.After30MinKg) / creep.LoadKg : null,
        LinearityKg = curve.BowLimitKg is { } bow ? Math.Max(bow, Bend(input, curve)) : null,
        PositionRelative = Position(input),
        SpanPerKelvin = input.SpanPerKelvin ?? input.Before.Errors.SpanPerKelvin,
    };

    /// <summary>What the curve leaves over at each load, both ways together so that hysteresis drops out.</summary>
    public static IEnumerable<(LoadStack Load, AtLoad Left)> LeftOver(ProcedureInput input, CurveFit curve) => input.Points.Zip(curve.ResidualsKg)
        .Where(point => !point.First.Load.IsEmpty)
        .GroupBy(point => point.First.Load)
        .Select(level => (level.Key, new AtLoad(
            level.GroupBy(point => point.First.Way).Average(way => way.Average(point => point.Second)),
            Characterisation.Kg(input.Masses, level.Key, curve))));

    // Loops open early and stay open: where half of the largest difference is found, any load above may meet all of it.
    static double WideOpenAtKg(PadCharacteristics found) => found.Hysteresis is not { } loop ? 0 : found.Levels
        .Where(l => !l.Load.IsEmpty && Math.Abs(l.HysteresisKg ?? 0) >= 0.5 * Math.Abs(loop.Kg))
        .Min(l => l.Kg);

    // Only where the repeats contradict the curve are the means of the levels off by more than repeatability.
    static double Bend(ProcedureInput input, CurveFit curve) =>
        curve.Choice.LackOfFit is { Chance: < ModelChoice.LackOfFitChance } ? LeftOver(input, curve).Max(l => Math.Abs(l.Left.Kg)) : 0;

    // Trims that were fitted exactly show nothing about the places between.
    static double? Position(ProcedureInput input) => input.Trims is { SparePlaces: > 0 } trims && input.TrimLoadKg > 0
        ? 0.5 * trims.AfterKg / input.TrimLoadKg
        : input.Before.Errors.PositionRelative;
}
