using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Contract;
using ScaleLink.Daemon.Journal;
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

    /// <summary>The plan, checked.</summary>
    /// <exception cref="StepRefusedException">The pad is not there, or a mass makes no sense.</exception>
    public static ProcedurePlan Plan(Wire.StartProcedureRequest request, PadChannel pad, Place here)
    {
        var (identity, before, _) = pad.Standing;
        if (identity is null)
            throw new StepRefusedException(PadStateCodes.NotLive.Because(pad.Corner.ToString()));
        if (before is null)
            throw new StepRefusedException(PadStateCodes.NoSensitivity.Because(identity.SerialNumber));
        var masses = MassMapping.Masses(request.Masses);
        var plan = new ProcedurePlan
        {
            Before = before,
            Corner = pad.Corner,
            Masses = masses,
            Loads = Loads(request, masses, before.CapacityKg),
            Place = here,
            Repetitions = (int)Math.Min(request.HasRepetitions ? request.Repetitions : 3, MostRepetitions),
            WayDown = !request.HasWayDown || request.WayDown,
            Preloads = (int)Math.Min(request.HasPreloads ? request.Preloads : 3, MostRepetitions),
            CornerLoad = request.CornerLoad is { } corner ? MassMapping.Stack(corner) : null,
            CreepTest = request.CreepTest,
            LoopApart = true,
            SpanPerKelvin = request.HasSpanPerKelvin ? Checked("span_per_kelvin", request.SpanPerKelvin, 0, 0.01) : null,
            Asked = request.Asked is { } asked
                ? new AskedUncertainty(
                    Checked("asked.expanded_kg", asked.ExpandedKg, 1e-6, 1e6), Checked("asked.at_kg", asked.AtKg, 0, before.CapacityKg),
                    asked.HasCoverage ? Checked("asked.coverage", asked.Coverage, 0.5, 0.999) : 0.95)
                : null,
        };
        return ProcedurePlanCheck.Of(plan) is { Count: > 0 } mistakes ? throw ApiErrors.Refused(mistakes) : plan;
    }

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
