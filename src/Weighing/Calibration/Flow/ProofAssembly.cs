namespace ScaleLink.Weighing.Calibration;

/// <summary>Puts the readings of a flow together for the arithmetic of a proof.</summary>
static class ProofAssembly
{
    public static ProofReport Report(ProofFlow flow)
    {
        try
        {
            return PadProof.Work(Input(flow));
        }
        catch (RefusedException refused)
        {
            return new ProofReport { Refusals = [refused.Refusal] };
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
            Points =
            [
                .. flow.Readings.Where(r => r.Step.Stage == ProofStage.Runs)
                    .Select(r => new ProofPoint(r.Step.Load, r.Step.Run, r.Step.Way, pad.Counts([.. r.Reading.CellCounts]))),
            ],
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

    static CellTrims? Trims(ProofFlow flow)
    {
        if (flow.Plan.CornerLoad is not { } load)
            return null;
        var readings = flow.Readings.Where(r => r.Step.Stage == ProofStage.CornerLoad).ToList();
        var empty = readings.Single(r => r.Step.Load.IsEmpty).Reading.CellCounts;
        return CornerLoadTest.Work(
            [
                .. readings.Where(r => r.Step.Spot.Length > 0)
                    .Select(r => new PlacedLoad(r.Step.Spot, [.. r.Reading.CellCounts.Zip(empty, (counts, zero) => counts - zero)])),
            ],
            flow.Plan.Masses.Kg(load));
    }

    static Creep? Creep(ProofFlow flow, PadCalibration pad)
    {
        if (!flow.Plan.CreepTest)
            return null;
        double Counts(int minutes) => pad.Counts([.. flow.Readings.Single(r => r.Step.MinutesHeld == minutes).Reading.CellCounts]);
        var kgPerCount = flow.Plan.Before.SpanKgPerCount;
        var empty = pad.Counts([.. flow.Readings.Last(r => r.Step.Load.IsEmpty).Reading.CellCounts]);
        return new Creep(kgPerCount * (Counts(0) - empty),
            kgPerCount * (Counts(ProofScript.LastMinutes) - Counts(0)),
            kgPerCount * (Counts(ProofScript.LastMinutes) - Counts(ProofScript.LateMinutes)));
    }
}
