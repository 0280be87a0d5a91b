using ScaleLink.Weighing.Pads;
using ScaleLink.Weighing.Statistics;

namespace ScaleLink.Weighing.Calibration.Procedure;

/// <summary>Something that moved between two calibration procedures by more than their uncertainty.</summary>
/// <param name="What">"span", "zero" or "shape".</param>
/// <param name="Kg">Size: for the span at the highest common load, for the shape half way to it.</param>
/// <param name="ExpandedKg">What the two calibration procedures leave uncertain, 95 %.</param>
sealed record ProcedureShift(string What, double Kg, double ExpandedKg)
{
    /// <summary>As a finding with its code.</summary>
    public Diagnostic Finding => CalibrationCodes.PadShifted.Because($"{What} by {Arguments.Kg(Kg):+0.000}, ±{Arguments.Kg(ExpandedKg):0.000} (95 %)");
}

/// <summary>Holds a calibration procedure against the one before it.</summary>
static class ProcedureComparison
{
    /// <summary>
    /// A zero may wander by this share of the capacity without a word, since service takes zeros anew; more speaks of
    /// an overload or a blow (common practice, no published source).
    /// </summary>
    public const double ZeroShare = 0.005;

    /// <summary>What moved. Loads are compared as forces, so that another place makes no shift.</summary>
    /// <param name="before">The last calibration procedure.</param>
    /// <param name="now">The new one.</param>
    /// <param name="sameMasses">True when the same masses were used, so that their errors drop out.</param>
    public static IReadOnlyList<ProcedureShift> Of(PadCalibration before, PadCalibration now, bool sameMasses = false)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(now);
        // Other trims change the sum of the counts; for a load in the middle by the ratio of their means.
        var trims = now.CellTrim.Average() / before.CellTrim.Average();
        var gravity = now.Place.CarriedTo(before.Place);
        var highest = Math.Min(before.CalibratedToKg, now.CalibratedToKg);
        double Difference(double kg) => now.Kg(before.CountsAboveZero(kg) * trims) * gravity.Factor - kg;
        UncertaintyBudget Uncertainty(double kg) => new(
        [
            .. Terms(before, kg, sameMasses), .. Terms(now, kg, sameMasses),
            new(BudgetTerms.Gravity, gravity.RelativeUncertainty * kg),
        ]);

        List<ProcedureShift> shifts = [];
        void Note(string what, double kg, double expanded)
        {
            if (Math.Abs(kg) > expanded)
                shifts.Add(new ProcedureShift(what, kg, expanded));
        }
        Note("span", Difference(highest), Uncertainty(highest).Expanded());
        Note("shape", Difference(highest / 2) - Difference(highest) / 2, Uncertainty(highest / 2).Expanded());
        Note("zero", (now.ZeroCounts / trims - before.ZeroCounts) * before.SpanKgPerCount, ZeroShare * before.CapacityKg);
        return shifts;
    }

    // What is taken as usual is the pad's own and stays what it is from one procedure to the next: it makes no shift.
    static IEnumerable<UncertaintyTerm> Terms(PadCalibration pad, double kg, bool sameMasses)
    {
        var usual = pad.Errors.TakenAsUsual();
        return pad.Budget(kg).Terms.Where(t => !usual.Contains(t.Name) && !(sameMasses && t.Name is (BudgetTerms.Masses or BudgetTerms.Buoyancy)));
    }
}
