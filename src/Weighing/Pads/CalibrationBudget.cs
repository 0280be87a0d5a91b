using ScaleLink.Weighing.Statistics;

namespace ScaleLink.Weighing.Pads;

/// <summary>The named budget of a pad's calibration at one load. Method: JCGM 100:2008 (GUM).</summary>
static class CalibrationBudget
{
    public static UncertaintyBudget Of(PadCalibration pad, double kg, UseConditions use)
    {
        var load = Math.Abs(kg);
        var counts = pad.CountsAboveZero(kg);
        List<UncertaintyTerm> terms = [.. Curve(pad, counts), .. Pad(pad, load), .. HysteresisBudget.Of(pad, load)];
        if (pad.Errors.SpanPerKelvin is { } perKelvin)
            terms.Add(new(BudgetTerms.Temperature, TypeB.Rectangular(perKelvin * Kelvin(pad, use) * load)));
        if (pad.IsCalibrated)
            terms.AddRange(Usual(pad, load, use));
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
        yield return new(BudgetTerms.Repeatability, errors.RepeatabilitySdKg ?? 0, errors.RepeatabilityDegreesOfFreedom);
        yield return new(BudgetTerms.Creep, TypeB.Rectangular((errors.CreepRelative ?? 0) * load));
        yield return new(BudgetTerms.Linearity, TypeB.Normal95(errors.LinearityKg ?? 0));
        yield return new(BudgetTerms.Position, TypeB.Rectangular((errors.PositionRelative ?? 0) * load));
    }

    // Stated in place of what was never tested. Cells creep and warm each by itself, so that the mean of several errs less than one.
    static IEnumerable<UncertaintyTerm> Usual(PadCalibration pad, double load, UseConditions use)
    {
        var (errors, cells) = (pad.Errors, Math.Sqrt(pad.CellTrim.Count));
        if (errors.CreepRelative is null)
            yield return new(BudgetTerms.Creep, TypeB.Rectangular(UsualErrors.CreepRelative * load) / cells);
        if (errors.SpanPerKelvin is null)
            yield return new(BudgetTerms.Temperature, TypeB.Rectangular(UsualErrors.SpanPerKelvin * Kelvin(pad, use) * load) / cells);
        if (errors.PositionRelative is null)
        {
            // Placing the same load again has shown some of it; nothing counts twice (JCGM 100:2008, 4.3.10).
            var (whole, shown) = (TypeB.Rectangular(UsualErrors.PositionRelative * load), errors.RepeatabilitySdKg ?? 0);
            yield return new(BudgetTerms.Position, Math.Sqrt(Math.Max(0, whole * whole - shown * shown)));
        }
    }

    static double Kelvin(PadCalibration pad, UseConditions use) =>
        pad.TemperatureC is { } then && use.TemperatureC is { } now ? Math.Abs(now - then) : UseConditions.UnknownTemperatureSpanK;
}
