namespace ScaleLink.Weighing.Calibration;

/// <summary>Puts the readings of a flow together for the arithmetic of a proof.</summary>
static class ProofAssembly
{
    public static ProofReport Report(ProofFlow flow)
    {
        if (!flow.Readings.Any(r => r.Step.Stage == ProofStage.Runs))
            return new ProofReport { Refusals = [CalibrationCodes.TooFewPoints.Because("no run was read")] };
        try
        {
            return PadProof.Work(Input(flow));
        }
        catch (RefusedException refused)
        {
            return new ProofReport { Refusals = [refused.Diagnostic] };
        }
    }

    static ProofInput Input(ProofFlow flow)
    {
        var plan = flow.Plan;
        var trims = Trims(flow);
        var pad = trims is null ? plan.Before : plan.Before with { CellTrim = trims.Trim };
        var temperatures = flow.Readings.Select(r => r.Reading.TemperatureC).OfType<double>().ToList();
        return new ProofInput
        {
            Before = plan.Before,
            Masses = plan.Masses,
            Points = Points(flow, pad),
            Place = plan.Place,
            Time = flow.Readings.Max(r => r.Reading.Time),
            Who = flow.Ending?.Who ?? "",
            TemperatureC = temperatures.Count == 0 ? null : temperatures.Average(),
            ResolutionCounts = plan.ResolutionCounts,
            Trims = trims,
            TrimLoadKg = plan.CornerLoad is { } load ? plan.Masses.Kg(load) : 0,
            Creep = Creep(flow, pad),
            SpanPerKelvin = plan.SpanPerKelvin,
            Asked = plan.Asked,
        };
    }

    /// <summary>The runs as points, with the cells trimmed as in <paramref name="pad"/>.</summary>
    public static IReadOnlyList<ProofPoint> Points(ProofFlow flow, PadCalibration pad) =>
    [
        .. flow.Readings.Where(r => r.Step.Stage == ProofStage.Runs)
            .Select(r => new ProofPoint(r.Step.Load, r.Step.Run, r.Step.Way, pad.Counts([.. r.Reading.CellCounts]))),
    ];

    /// <summary>The pad with the trims of the corner-load test, when there is one; as it was before otherwise.</summary>
    public static PadCalibration Trimmed(ProofFlow flow) =>
        Trims(flow) is { } trims ? flow.Plan.Before with { CellTrim = trims.Trim } : flow.Plan.Before;

    static CellTrims? Trims(ProofFlow flow)
    {
        if (flow.Plan.CornerLoad is not { } load)
            return null;
        var readings = flow.Readings.Where(r => r.Step.Stage == ProofStage.CornerLoad).ToList();
        // Left out as a whole it is no test; left out in part, its places are too few and the arithmetic says so.
        if (readings.SingleOrDefault(r => r.Step.Load.IsEmpty)?.Reading.CellCounts is not { } empty || readings.Count == 1)
            return null;
        return CornerLoadTest.Work(
            [
                .. readings.Where(r => r.Step.Spot.Length > 0)
                    .Select(r => new PlacedLoad(r.Step.Spot, [.. r.Reading.CellCounts.Zip(empty, (counts, zero) => counts - zero)])),
            ],
            flow.Plan.Masses.Kg(load));
    }

    static Creep? Creep(ProofFlow flow, PadCalibration pad)
    {
        if (flow.Readings.Count(r => r.Step.MinutesHeld is not null) < ProofScript.CreepReadings)
            return null;
        double Counts(int minutes) => pad.Counts([.. flow.Readings.Single(r => r.Step.MinutesHeld == minutes).Reading.CellCounts]);
        var kgPerCount = flow.Plan.Before.SpanKgPerCount;
        var empty = pad.Counts([.. flow.Readings.Last(r => r.Step.Load.IsEmpty).Reading.CellCounts]);
        return new Creep(kgPerCount * (Counts(0) - empty),
            kgPerCount * (Counts(ProofScript.LastMinutes) - Counts(0)),
            kgPerCount * (Counts(ProofScript.LastMinutes) - Counts(ProofScript.LateMinutes)));
    }
}
