using ScaleLink.Weighing.Statistics;

namespace ScaleLink.Weighing.Pads;

/// <summary>The named budget of a pad's calibration at one load. Method: JCGM 100:2008 (GUM).</summary>
static class CalibrationBudget
{
    public static UncertaintyBudget Of(PadCalibration pad, double kg, UseConditions use)
    {
        var load = Math.Abs(kg);
        var counts = pad.CountsAboveZero(kg);
        List<UncertaintyTerm> terms = [.. Curve(pad, counts), .. Pad(pad, load)];
        if (pad.Errors.SpanPerKelvin is { } perKelvin)
            terms.Add(new(BudgetTerms.Temperature, TypeB.Rectangular(perKelvin * Kelvin(pad, use) * load)));
        if (use.Place is { } place)
            terms.Add(new(BudgetTerms.Gravity, pad.Place.CarriedTo(place).RelativeUncertainty * load));
        return new UncertaintyBudget([.. terms.Where(term => term.StandardUncertainty > 0)]);
    }

    static IEnumerable<UncertaintyTerm> Curve(PadCalibration pad, double counts)
    {
        var name = pad.IsCalibrated ? BudgetTerms.Fit : BudgetTerms.StatedSpan;
        yield return new(name, pad.Repeatability.AtCounts(counts), pad.RepeatabilityDegreesOfFreedom ?? double.PositiveInfinity);
        // Whether the masses of a lot err together is not known; the worse of the two is taken.
        yield return new(BudgetTerms.Masses, Math.Max(pad.MassesTogether.AtCounts(counts), pad.MassesApart.AtCounts(counts)));
    }

    static IEnumerable<UncertaintyTerm> Pad(PadCalibration pad, double load)
    {
        var errors = pad.Errors;
        yield return new(BudgetTerms.Buoyancy, TypeB.Rectangular(errors.BuoyancyRelative * load));
        yield return new(BudgetTerms.Resolution,
            Math.Sqrt(2) * TypeB.Rounding(errors.ResolutionCounts * Math.Abs(pad.SpanKgPerCount)));
        yield return new(BudgetTerms.ZeroReturn, TypeB.Rectangular(errors.ZeroReturnKg ?? 0));
        yield return new(BudgetTerms.Hysteresis, TypeB.Arcsine(Hysteresis(errors, load)));
        yield return new(BudgetTerms.Repeatability, errors.RepeatabilitySdKg ?? 0, errors.RepeatabilityDegreesOfFreedom);
        yield return new(BudgetTerms.Creep, TypeB.Rectangular((errors.CreepRelative ?? 0) * load));
        yield return new(BudgetTerms.Linearity, TypeB.Rectangular(errors.LinearityKg ?? 0));
        yield return new(BudgetTerms.Position, TypeB.Rectangular((errors.PositionRelative ?? 0) * load));
    }

    // A curve through both ways lies between them, so half of the difference is left either way. A wheel mostly comes on one
    // way and stays there, so that its load lies near an edge of the loop rather than anywhere within it.
    static double Hysteresis(ErrorSources errors, double load)
    {
        if (errors.HysteresisKg is not { } whole || errors.HysteresisAtKg <= 0)
            return 0;
        var here = whole * Math.Min(1, load / errors.HysteresisAtKg);
        return errors.CurveFollowsWayUp ? here : 0.5 * here;
    }

    static double Kelvin(PadCalibration pad, UseConditions use) =>
        pad.TemperatureC is { } then && use.TemperatureC is { } now ? Math.Abs(now - then) : UseConditions.UnknownTemperatureSpanK;
}
