using ScaleLink.Weighing.Pads;

namespace ScaleLink.Weighing.Calibration.Procedure;

/// <summary>What a finished calibration procedure comes to, in one sentence: what it is good for, and what changes by it.</summary>
static class ProcedureConclusion
{
    /// <summary>The sentence.</summary>
    /// <param name="report">Of the procedure.</param>
    /// <param name="before">Calibration in effect while it was read.</param>
    public static Sentence Of(ProcedureReport report, PadCalibration before)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(before);
        if (report.Calibration is not { } now)
            return report.Refusals.Count == 0 ? "" : (Sentence)$"No calibration: {report.Refusals[0].Message}";
        var (highest, expanded) = (now.CalibratedToKg, now.Budget(now.CalibratedToKg).Expanded());
        Sentence good = $"Good to {Kg(highest):0.#} within ±{Kg(expanded):0.00} (95 %)";
        if (report.Shifts is [{ } shift, ..])
            return (Sentence)$"{good}, but the {shift.What} has moved by {Kg(shift.Kg):+0.00} since the calibration before: find out why before it is adopted.";
        return before.HasSensitivity ? (Sentence)$"{good}; {Change(before, now, highest, expanded)}." : (Sentence)$"{good}; the first calibration of this pad.";
    }

    static Sentence Change(PadCalibration before, PadCalibration now, double highest, double expanded)
    {
        // Other trims change the sum of the counts; for a load in the middle by the ratio of their means.
        var change = highest - before.Kg(now.CountsAboveZero(highest) * before.CellTrim.Average() / now.CellTrim.Average());
        return Math.Abs(change) > expanded
            ? (Sentence)$"from now on such a load reads {Kg(change):+0.00} against before"
            : (Sentence)$"the calibration before reads the same within that";
    }
}
