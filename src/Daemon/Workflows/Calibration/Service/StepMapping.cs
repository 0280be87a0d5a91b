using ScaleLink.Daemon.Bay;
using ScaleLink.Weighing.Calibration;
using ScaleLink.Weighing.Calibration.Flow;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.Calibration.Service;

/// <summary>Puts the present step of a calibration procedure, and the pad as it stands, into the words of the public API.</summary>
internal static class StepMapping
{
    public static Wire.ProcedureStep? Step(ProcedureFlow flow, DateTimeOffset now)
    {
        if (flow.Next is not { } next)
            return null;
        var step = new Wire.ProcedureStep
        {
            Number = (uint)next.Number,
            Of = (uint)next.Of,
            Stage = Stage(next.Step.Stage),
            Words = next.Words,
            Load = MassMapping.Stack(next.Step.Load),
            LoadKg = flow.Plan.Masses.Kg(next.Step.Load),
            Untold = next.IsUntold,
            Repetition = (uint)next.Step.Repetition,
            WayDown = next.Step.Way == LoadingWay.Down,
            Spot = next.Step.Spot,
            SettlingS = next.SettlingSeconds,
        };
        if (next.ChangeKg is { } change)
            step.ChangeKg = change;
        if (next.Step.MinutesHeld is { } minutes)
        {
            step.HeldMinutes = (uint)minutes;
            if (flow.Readings.FirstOrDefault(r => r.Step.MinutesHeld == 0) is { } first)
                step.HeldSoFarMinutes = (now - first.Reading.Time).TotalMinutes;
        }

        return step;
    }

    // Noise has no place on a pad.
    private const double LeastSharedKg = 1;

    public static Wire.ProcedureReading Reading(ProcedureFlow flow, PadObservation seen)
    {
        var reading = new Wire.ProcedureReading { CellCounts = { seen.Reading.CellCounts }, Settling = seen.Rest.Progress, Settled = seen.Rest.Settled };
        if (flow.Scale is { } before && flow.Readings.LastOrDefault(r => r.Step.Load.IsEmpty) is { } empty && seen.Reading.CellCounts.Count == before.CellTrim.Count)
        {
            double[] cells = [.. seen.Reading.CellCounts.Zip(empty.Reading.CellCounts, (now, was) => now - was)];
            reading.LoadKg = before.Kg(before.Counts([.. seen.Reading.CellCounts]) - before.Counts([.. empty.Reading.CellCounts]));
            // Nobody sees from outside which cell is the first; where most of the load stands tells.
            if (reading.LoadKg > LeastSharedKg)
                reading.CellShares.Add(cells.Select(c => c / cells.Sum()));
        }

        if (seen.Rest.NoiseKg is { } noise)
            reading.NoiseKg = noise;
        if (seen.Reading.TemperatureC is { } temperature)
            reading.TemperatureC = temperature;
        if (seen.Reading.PitchDeg is { } pitch)
            reading.PitchDeg = pitch;
        if (seen.Reading.RollDeg is { } roll)
            reading.RollDeg = roll;
        return reading;
    }

    public static Wire.ProcedureStage Stage(ProcedureStage stage) => stage switch
    {
        ProcedureStage.Preload => Wire.ProcedureStage.Preload,
        ProcedureStage.CornerLoad => Wire.ProcedureStage.CornerLoad,
        ProcedureStage.Repetitions => Wire.ProcedureStage.Repetitions,
        ProcedureStage.Creep => Wire.ProcedureStage.Creep,
        _ => Wire.ProcedureStage.Unspecified,
    };
}
