using ScaleLink.Weighing.Calibration.Fitting;
using ScaleLink.Weighing.Calibration.Masses;
using ScaleLink.Weighing.Pads;
using ScaleLink.Weighing.Statistics;

namespace ScaleLink.Weighing.Calibration.Flow;

/// <summary>The calibration that a plan will bring, as far as its uncertainty goes: the same budget that the result will have, over readings that nobody has taken yet.</summary>
static class ForeseenCalibration
{
    /// <summary>With a pad that spreads and lags as is usual, or as its calibration before has shown.</summary>
    /// <exception cref="RefusedException">The plan can never be fitted.</exception>
    public static PadCalibration Of(ProcedurePlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var before = plan.Before.Errors;
        // What usually tells repeats apart is where the load stands: a standard deviation of its own limits (common practice, no published source).
        return Made(plan, before.RepeatabilitySdKg ?? TypeB.Rectangular(UsualErrors.PositionRelative * HighestKg(plan)),
            before.HysteresisKg ?? UsualErrors.HysteresisOfCapacity * plan.Before.CapacityKg);
    }

    /// <summary>With a pad that neither spreads nor lags: no reading comes under what is left then.</summary>
    /// <exception cref="RefusedException">The plan can never be fitted.</exception>
    public static PadCalibration Best(ProcedurePlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var best = Made(plan, 0, 0);
        return best with
        {
            Errors = best.Errors with
            {
                CreepRelative = plan.CreepTest ? 0 : best.Errors.CreepRelative,
                PositionRelative = plan.CornerLoad is not null ? 0 : best.Errors.PositionRelative,
            },
        };
    }

    /// <summary>Highest load that the plan reaches, kg.</summary>
    public static double HighestKg(ProcedurePlan plan) => plan.Loads.Select(load => PlanEffort.ForeseenKg(plan.Masses, load)).DefaultIfEmpty(0).Max();

    static PadCalibration Made(ProcedurePlan plan, double sdKg, double hysteresisKg)
    {
        // Any sensitivity will do where none is known: only shares of the range count.
        var kgPerCount = plan.Before.HasSensitivity ? plan.Before.SpanKgPerCount : plan.Before.CapacityKg * 1e-6;
        List<ProcedurePoint> points =
        [
            .. ProcedureScript.Of(plan).Where(s => s.Stage == ProcedureStage.Repetitions)
                .Select(s => new ProcedurePoint(s.Load, s.Repetition, s.Way, PlanEffort.ForeseenKg(plan.Masses, s.Load) / kgPerCount)),
        ];
        var fit = ForeseenFit.Of(plan.Masses, points, sdKg);
        return plan.Before with
        {
            Standing = CalibrationStanding.Calibrated,
            SpanKgPerCount = kgPerCount,
            CurvatureKgPerCount2 = 0,
            Repeatability = fit.Repeatability,
            RepeatabilityDegreesOfFreedom = fit.DegreesOfFreedom,
            MassesTogether = fit.MassesTogether,
            MassesApart = fit.MassesApart,
            CalibratedToKg = HighestKg(plan),
            Place = plan.Place,
            Errors = plan.Before.Errors with
            {
                ResolutionCounts = plan.Before.HasSensitivity ? plan.ResolutionCounts : 0,
                BuoyancyRelative = plan.Masses.Masses.Select(AirBuoyancy.RelativeLimit).DefaultIfEmpty(0).Max(),
                ZeroReturnKg = null,
                HysteresisKg = plan.WayDown ? hysteresisKg : null,
                HysteresisAtKg = UsualErrors.HysteresisOpenAt * plan.Before.CapacityKg,
                CurveFollowsWayUp = !plan.WayDown,
                RepeatabilitySdKg = fit.RepeatDegreesOfFreedom > 0 ? sdKg : null,
                RepeatabilityDegreesOfFreedom = fit.RepeatDegreesOfFreedom > 0 ? fit.RepeatDegreesOfFreedom : double.PositiveInfinity,
                CreepRelative = null,
                LinearityKg = fit.BowLimitKg,
                SpanPerKelvin = plan.SpanPerKelvin ?? plan.Before.Errors.SpanPerKelvin,
            },
        };
    }
}
