using Google.Protobuf.WellKnownTypes;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Contract;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Weighing.Calibration;
using ScaleLink.Weighing.Calibration.Flow;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.Calibration.Service;

/// <summary>Puts a calibration procedure at one instant into the words of the public API.</summary>
internal sealed class ProcedureMapping(LiveBay bay, ProcedureDesk desk, ApiMapping mapping, BayClock clock)
{
    /// <summary>The calibration procedure at the corner of a pad.</summary>
    public Wire.ProcedureView View(PadChannel pad)
    {
        var (procedure, refused) = desk.At(pad.Corner);
        var view = procedure is null
            ? new Wire.ProcedureView { State = Wire.ProcedureState.None, SerialNumber = pad.Standing.Identity?.SerialNumber ?? "", Corner = pad.Corner.ToWire() }
            : Recorded(procedure);
        view.Stamp = mapping.Stamp(bay.Newest?.Seq ?? 0, clock.NowNs, 2.5 * ChangeNudges.AtLeastEvery.TotalMilliseconds);
        view.Cautions.AddRange(ProcedureCautions.All);
        if (refused is not null)
            view.Refused = Now(refused);
        if (procedure is { IsOpen: true })
            (view.LiftsLeft, view.LiftedLeftKg) = ((uint)procedure.Flow.EffortLeft.Lifts, procedure.Flow.EffortLeft.Kg);
        if (procedure is { State: ProcedureState.Measuring })
            FillLive(view, procedure);
        return view;
    }

    /// <summary>What is on record of a calibration procedure, whatever the pad does now.</summary>
    public Wire.ProcedureView Recorded(ProcedureRecord procedure)
    {
        var digest = ProcedureDigest.Of(procedure.Flow);
        return new Wire.ProcedureView
        {
            Corner = procedure.Corner.ToWire(),
            SerialNumber = procedure.SerialNumber,
            State = State(procedure.State),
            ProcedureId = $"{procedure.Id}",
            BegunAt = Timestamp.FromDateTimeOffset(procedure.BegunAt),
            BegunBy = procedure.BegunBy,
            Points = { digest.Points.Select(Point) },
            Result = digest.Report is { } report ? ResultMapping.Result(report, procedure.Flow.Plan.Before, Now) : null,
            Masses = { procedure.Flow.Plan.Masses.Masses.Select(MassMapping.Record) },
            Ending = Ending(procedure),
            Forecast = digest.Forecast is { } forecast ? PlanMapping.Forecast(forecast) : null,
        };
    }

    public static Wire.ProcedureSummary Summary(ProcedureRecord procedure) => new()
    {
        ProcedureId = $"{procedure.Id}",
        SerialNumber = procedure.SerialNumber,
        Corner = procedure.Corner.ToWire(),
        State = State(procedure.State),
        BegunAt = Timestamp.FromDateTimeOffset(procedure.BegunAt),
        BegunBy = procedure.BegunBy,
        Points = (uint)procedure.Flow.Readings.Count,
        Ending = Ending(procedure),
    };

    private void FillLive(Wire.ProcedureView view, ProcedureRecord procedure)
    {
        var (flow, bench) = (procedure.Flow, BenchReading.Of(bay, procedure));
        var answer = bench.Offer(bay, flow);
        view.Ready = answer.Accepted;
        if (!answer.Accepted)
            view.WaitingFor = Now(answer.Refusals[0]);
        view.Step = StepMapping.Step(flow, clock.ToUtc(clock.NowNs));
        if (bench.Seen is { } seen)
            view.Reading = StepMapping.Reading(flow, seen);
    }

    private Wire.Diagnostic Now(Diagnostic refusal) => mapping.Told(refusal with { SinceNs = clock.NowNs });

    private static Wire.ProcedurePoint Point(ProgressPoint point)
    {
        var (step, reading) = point.Taken;
        var result = new Wire.ProcedurePoint
        {
            Number = (uint)point.Number,
            Stage = StepMapping.Stage(step.Stage),
            Repetition = (uint)step.Repetition,
            WayDown = step.Way == LoadingWay.Down,
            Load = MassMapping.Stack(step.Load),
            Spot = step.Spot,
            Time = Timestamp.FromDateTimeOffset(reading.Time),
            Counts = point.Counts,
            CellCounts = { reading.CellCounts },
            Because = point.Taken.Because ?? "",
        };
        if (point.LoadKg is { } kg)
            result.LoadKg = kg;
        if (point.ReadKg is { } read)
            result.ReadKg = read;
        if (point.ResidualKg is { } residual)
            result.ResidualKg = residual;
        return result;
    }

    private static Wire.ProcedureEnding? Ending(ProcedureRecord procedure) => procedure.Flow.Ending is not { } ending ? null : new Wire.ProcedureEnding
    {
        Time = Timestamp.FromDateTimeOffset(ending.Time),
        Who = ending.Who,
        Reason = procedure.Calibration?.Note ?? ending.Reason,
        CalibrationId = procedure.Calibration?.Calibration.Identity ?? "",
    };

    private static Wire.ProcedureState State(ProcedureState state) => state switch
    {
        ProcedureState.Measuring => Wire.ProcedureState.Measuring,
        ProcedureState.Review => Wire.ProcedureState.Review,
        ProcedureState.Adopted => Wire.ProcedureState.Adopted,
        ProcedureState.Rejected => Wire.ProcedureState.Rejected,
        ProcedureState.Abandoned => Wire.ProcedureState.Abandoned,
        _ => Wire.ProcedureState.Unspecified,
    };
}
