using ScaleLink.Weighing.Calibration.Procedure;
using ScaleLink.Weighing.Calibration.Results;
using ScaleLink.Weighing.Calibration.Trim;
using ScaleLink.Weighing.Pads;

namespace ScaleLink.Weighing.Calibration.Flow;

/// <summary>Puts the readings of a flow together for the arithmetic of a calibration procedure.</summary>
static class ProcedureAssembly
{
    public static ProcedureReport Report(ProcedureFlow flow)
    {
        if (!flow.Readings.Any(r => r.Step.Stage == ProcedureStage.Repetitions))
            return new ProcedureReport { Refusals = [CalibrationCodes.TooFewPoints.Because("no repetition was read")] };
        try
        {
            return CalibrationEvaluation.Evaluate(Input(flow));
        }
        catch (RefusedException refused)
        {
            return new ProcedureReport { Refusals = [refused.Diagnostic] };
        }
    }

    static ProcedureInput Input(ProcedureFlow flow)
    {
        var plan = flow.Plan;
        var trims = Trims(flow);
        var pad = trims is null ? plan.Before : plan.Before with { CellTrim = trims.Trim };
        var temperatures = flow.Readings.Select(r => r.Reading.TemperatureC).OfType<double>().ToList();
        return new ProcedureInput
        {
            Before = plan.Before,
            Masses = plan.Masses,
            Points = Points(flow, pad),
            Place = plan.Place,
            Time = flow.Readings.Max(r => r.Reading.Time),
            // Who measured, so that the calibration is the same before and after somebody adopts it.
            Who = plan.Who ?? flow.Ending?.Who ?? "",
            TemperatureC = temperatures.Count == 0 ? null : temperatures.Average(),
            ResolutionCounts = plan.ResolutionCounts,
            Trims = trims,
            TrimLoadKg = plan.CornerLoad is { } load ? plan.Masses.Kg(load) : 0,
            Creep = Creep(flow, pad),
            SpanPerKelvin = plan.SpanPerKelvin,
            Asked = plan.Asked,
            LoopApart = plan.LoopApart,
        };
    }

    /// <summary>The repetitions as points, with the cells trimmed as in <paramref name="pad"/>.</summary>
    public static IReadOnlyList<ProcedurePoint> Points(ProcedureFlow flow, PadCalibration pad) =>
    [
        .. flow.Readings.Where(r => r.Step.Stage == ProcedureStage.Repetitions)
            .Select(r => new ProcedurePoint(r.Step.Load, r.Step.Repetition, r.Step.Way, pad.Counts([.. r.Reading.CellCounts]))),
    ];

    /// <summary>The pad with the trims of the corner-load test, when there is one; as it was before otherwise.</summary>
    public static PadCalibration Trimmed(ProcedureFlow flow) =>
        Trims(flow) is { } trims ? flow.Plan.Before with { CellTrim = trims.Trim } : flow.Plan.Before;

    static CellTrims? Trims(ProcedureFlow flow)
    {
        if (flow.Plan.CornerLoad is not { } load)
            return null;
        var readings = flow.Readings.Where(r => r.Step.Stage == ProcedureStage.CornerLoad).ToList();
        // Left out as a whole it is no test; left out in part, its places are too few and the arithmetic says so.
        if (readings.SingleOrDefault(r => r.Step.Load.IsEmpty)?.Reading.CellCounts is not { } empty || readings.Count == 1)
            return null;
        return CornerLoadTest.Evaluate(
            [
                .. readings.Where(r => r.Step.Spot.Length > 0)
                    .Select(r => new PlacedLoad(r.Step.Spot, [.. r.Reading.CellCounts.Zip(empty, (counts, zero) => counts - zero)])),
            ],
            flow.Plan.Masses.Kg(load));
    }

    static Creep? Creep(ProcedureFlow flow, PadCalibration pad)
    {
        if (flow.Readings.Count(r => r.Step.MinutesHeld is not null) < ProcedureScript.CreepReadings)
            return null;
        double Counts(int minutes) => pad.Counts([.. flow.Readings.Single(r => r.Step.MinutesHeld == minutes).Reading.CellCounts]);
        var kgPerCount = (FoundSensitivity.Of(flow.Plan, flow.Readings) ?? flow.Plan.Before).SpanKgPerCount;
        var empty = pad.Counts([.. flow.Readings.Last(r => r.Step.Load.IsEmpty).Reading.CellCounts]);
        return new Creep(kgPerCount * (Counts(0) - empty),
            kgPerCount * (Counts(ProcedureScript.LastMinutes) - Counts(0)),
            kgPerCount * (Counts(ProcedureScript.LastMinutes) - Counts(ProcedureScript.LateMinutes)));
    }
}
