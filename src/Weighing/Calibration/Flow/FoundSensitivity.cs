using ScaleLink.Weighing.Pads;

namespace ScaleLink.Weighing.Calibration.Flow;

/// <summary>
/// What turns the counts of a procedure into kilograms while it runs: the calibration before, or, for a pad of which no sensitivity is known,
/// what its first known load has shown. The first load itself is taken at somebody's word; every one after it is held against it.
/// </summary>
static class FoundSensitivity
{
    /// <summary>The scale; null before the first known load of a pad without a sensitivity.</summary>
    public static PadCalibration? Of(ProcedurePlan plan, IEnumerable<TakenReading> readings)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(readings);
        if (plan.Before.HasSensitivity)
            return plan.Before;
        double? empty = null;
        foreach (var (step, reading) in readings)
        {
            var counts = plan.Before.Counts([.. reading.CellCounts]);
            if (step.Load.IsEmpty)
                empty = counts;
            else if (step.Load.Ballast.Count == 0 && empty is { } zero && counts != zero)
                return plan.Before with { SpanKgPerCount = plan.Masses.Kg(step.Load) / (counts - zero) };
        }
        return null;
    }
}
