using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Contract;
using ScaleLink.Daemon.Journal;
using ScaleLink.Measure;
using ScaleLink.Weighing.Calibration.Flow;
using ScaleLink.Weighing.Calibration.Masses;
using ScaleLink.Weighing.Calibration.Procedure;
using ScaleLink.Weighing.Pads;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.Calibration.Service;

/// <summary>Makes a plan out of a request and the pad that it is for.</summary>
internal static class PlanReading
{
    private const uint MostRepetitions = 20;

    // Older ones say little of how the pad is now.
    private const int MostZeros = 50;

    /// <summary>The plan, checked.</summary>
    /// <exception cref="StepRefusedException">The pad is not there, a mass makes no sense, or the plan can never come off.</exception>
    public static ProcedurePlan Plan(Wire.StartProcedureRequest request, PadChannel pad, PadRecords records) => Choice(request, pad, records).Plan;

    /// <summary>The plan, checked, with what it costs and brings.</summary>
    /// <exception cref="StepRefusedException">The pad is not there, a mass makes no sense, or the plan can never come off.</exception>
    public static PlanChoice Choice(Wire.StartProcedureRequest request, PadChannel pad, PadRecords records)
    {
        ArgumentNullException.ThrowIfNull(request);
        var full = Full(request, Before(pad, records), pad.Corner, records);
        // Who states loads, repetitions or ballast has a plan of his own.
        if (request.Loads.Count > 0 || request.HasRepetitions || request.HasReachWithBallastKg)
            return PlanChoice.Only(PlanLength.Stated, Good(full));
        var brief = full with { Loads = LoadChoice.Of(full.Masses, full.Before.CapacityKg, PlanChoice.ShortLoads), Repetitions = 1, Preloads = request.HasPreloads ? full.Preloads : 1 };
        return request.Length switch
        {
            Wire.PlanLength.Full => PlanChoice.Only(PlanLength.Full, Good(full), IsGood(brief) ? brief : null),
            Wire.PlanLength.Short => PlanChoice.Only(PlanLength.Short, Good(brief), full),
            _ => IsGood(brief) ? PlanChoice.Between(brief, Good(full)) : PlanChoice.Only(PlanLength.Full, Good(full)),
        };
    }

    private static ProcedurePlan Full(Wire.StartProcedureRequest request, PadCalibration before, Corner corner, PadRecords records)
    {
        var masses = MassMapping.Masses(request.Masses);
        return new ProcedurePlan
        {
            Before = before,
            Corner = corner,
            Masses = masses,
            Loads = Loads(request, masses, before.CapacityKg),
            Place = records.Here,
            Repetitions = (int)Math.Min(request.HasRepetitions ? request.Repetitions : 3, MostRepetitions),
            WayDown = !request.HasWayDown || request.WayDown,
            Preloads = (int)Math.Min(request.HasPreloads ? request.Preloads : 3, MostRepetitions),
            CornerLoad = request.CornerLoad is { } spot ? MassMapping.Stack(spot) : null,
            CreepTest = request.CreepTest,
            LoopApart = true,
            EmptyCounts = EmptyCheck.Lightest(before, KnownEmpty(before, records)),
            SpanPerKelvin = request.HasSpanPerKelvin ? Checked("span_per_kelvin", request.SpanPerKelvin, 0, 0.01) : null,
            Asked = request.Asked is { } asked
                ? new AskedUncertainty(
                    Checked("asked.expanded_kg", asked.ExpandedKg, 1e-6, 1e6), Checked("asked.at_kg", asked.AtKg, 0, before.CapacityKg),
                    asked.HasCoverage ? Checked("asked.coverage", asked.Coverage, 0.5, 0.999) : 0.95)
                : null,
        };
    }

    // A pad that has no sensitivity gets it here: capacity and cells it says itself, the rest its masses tell.
    private static PadCalibration Before(PadChannel pad, PadRecords records)
    {
        var (identity, before, _) = pad.Standing;
        if (identity is null)
            throw new StepRefusedException(PadStateCodes.NotLive.Because(pad.Corner.ToString()));
        if (before is null && !(identity.CapacityKg > 0))
            throw new StepRefusedException(PadStateCodes.NoSensitivity, $"{identity.SerialNumber} states no capacity: nobody knows what it may carry.", "Give capacity_kg in the bay file.");
        return before ?? PadCalibration.WithoutSensitivity(identity.SerialNumber, identity.CapacityKg, identity.Cells, records.Here);
    }

    // Every zero since the calibration: the newest may have been taken with a load on the pad.
    private static IEnumerable<double> KnownEmpty(PadCalibration before, PadRecords records)
    {
        if (!before.HasSensitivity)
            return [];
        var zeros = records.Zeros.History(before.Pad).Where(z => !before.IsCalibrated || z.TakenAt >= before.Time).TakeLast(MostZeros).Select(z => z.Trimmed(before)).OfType<double>();
        return before.IsCalibrated ? zeros.Append(before.ZeroCounts) : zeros;
    }

    private static ProcedurePlan Good(ProcedurePlan plan) => ProcedurePlanCheck.Of(plan) is { Count: > 0 } mistakes ? throw new StepRefusedException(mistakes) : plan;

    private static bool IsGood(ProcedurePlan plan) => ProcedurePlanCheck.Of(plan).Count == 0;

    private static IReadOnlyList<LoadStack> Loads(Wire.StartProcedureRequest request, MassSet masses, double capacityKg)
    {
        if (request.Loads.Count > 0)
            return [.. request.Loads.Select(MassMapping.Stack)];
        var chosen = LoadChoice.Of(masses, capacityKg);
        return request.HasReachWithBallastKg
            // The whole set comes last in any case; the parts below it are what else was chosen.
            ? [.. SubstitutionPlan.Steps(masses, [.. chosen.SkipLast(1)], Checked("reach_with_ballast_kg", request.ReachWithBallastKg, 1, 1e6), capacityKg).Where(s => !s.IsEmpty)]
            : chosen;
    }

    private static double Checked(string field, double value, double least, double most) => value >= least && value <= most
        ? value
        : throw ApiErrors.BadRequest(ServiceCodes.NumberUnusable, field, $"{field} = {value} makes no sense.", $"Give a number from {least} to {most}.");
}
