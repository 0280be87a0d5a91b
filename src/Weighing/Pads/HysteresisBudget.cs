using ScaleLink.Weighing.Statistics;

namespace ScaleLink.Weighing.Pads;

/// <summary>
/// What hysteresis leaves uncertain about a load. A wheel that is lowered and bounced comes to stand anywhere between the two ways, mostly
/// nearer to one of them.
/// </summary>
static class HysteresisBudget
{
    public static IEnumerable<UncertaintyTerm> Of(PadCalibration pad, double load)
    {
        if (pad.Errors is { HysteresisKg: { } whole, HysteresisAtKg: > 0 } errors)
            yield return new(BudgetTerms.Hysteresis, Measured(whole * Math.Min(1, load / errors.HysteresisAtKg), load / pad.CalibratedToKg));
        else if (pad.IsCalibrated && pad.Errors.HysteresisKg is null)
            // The curve follows the way up, so the load lies above it by anything up to the whole.
            yield return new(BudgetTerms.Hysteresis, TypeB.Rectangular(
                UsualErrors.HysteresisOfCapacity * pad.CapacityKg * Math.Min(1, load / (UsualErrors.HysteresisOpenAt * pad.CapacityKg))));
    }

    // In the lower half of the range the curve lies between the ways: half of their difference is left either way, most likely near an end. At
    // the highest load both ways meet, so the curve there lies on the way up and says nothing of the other: a load that comes back from
    // above lies off by anything up to the whole, always to one side, and its mean square about the curve is that of a rectangle of
    // the whole to both sides. Between the two by the part of the range.
    static double Measured(double whole, double partOfRange)
    {
        var (between, beside) = (TypeB.Arcsine(0.5 * whole), TypeB.Rectangular(whole));
        var weight = Math.Clamp(2 * partOfRange - 1, 0, 1);
        return Math.Sqrt((1 - weight) * between * between + weight * beside * beside);
    }
}
