using ScaleLink.Weighing.Calibration.Procedure;
using ScaleLink.Weighing.Pads;
using ScaleLink.Weighing.Zeros;

namespace ScaleLink.Weighing.Calibration.Flow;

/// <summary>
/// Whether a pad that is to be empty is. Held against the lightest that it ever was known to stand, not against the newest zero: whoever
/// zeroes a loaded pad and calibrates it then would put the load into every curve.
/// </summary>
static class EmptyCheck
{
    /// <summary>Why the pad does not look empty; null when it does, or when nothing is known that could tell.</summary>
    /// <param name="plan">With what is known of the empty pad.</param>
    /// <param name="reading">Of the pad that is to be empty.</param>
    /// <param name="first">The first empty reading of this procedure; null before it.</param>
    /// <param name="scale">The calibration before, or the sensitivity as found so far; null while there is none.</param>
    public static Diagnostic? Of(ProcedurePlan plan, PadReading reading, PadReading? first, PadCalibration? scale)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(reading);
        if (scale is null)
            return null;
        var counts = scale.Counts([.. reading.CellCounts]);
        double? reference = first is not null ? scale.Counts([.. first.CellCounts]) : plan.EmptyCounts ?? (plan.Before.IsCalibrated ? plan.Before.ZeroCounts : null);
        if (reference is { } known)
            return scale.Kg(counts - known) is var kg && kg > ProcedureComparison.ZeroShare * scale.CapacityKg
                ? CalibrationCodes.ZeroLoaded.Because($"it carries {Kg(kg):+0.0} against the empty pad {(first is null ? "as it was known before" : "at the beginning")}")
                : null;
        var (whole, limits) = (Math.Abs(scale.Kg(counts)), new ZeroLimits());
        return plan.Before.HasSensitivity && whole > limits.FirstShare * scale.CapacityKg
            ? CalibrationCodes.FirstZeroLoaded.Because($"{Kg(whole):0.0} of {Kg(scale.CapacityKg):0.#}, at most {limits.FirstShare:P0} of it is usual")
            : null;
    }

    /// <summary>Counts of the lightest of some empty readings and zeros, as the calibration before adds them up; null without any.</summary>
    public static double? Lightest(PadCalibration before, IEnumerable<double> counts)
    {
        ArgumentNullException.ThrowIfNull(before);
        List<double> known = [.. counts];
        // Cells wired in reverse count down under a load.
        return known.Count == 0 ? null : known.MinBy(c => c * Math.Sign(before.SpanKgPerCount));
    }
}
