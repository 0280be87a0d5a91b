using Google.Protobuf.WellKnownTypes;
using ScaleLink.Daemon.Pipeline;
using ScaleLink.Daemon.Proving;
using ScaleLink.Weighing.Calibration;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Publishing.Grpc.Proofs;

/// <summary>Puts a proof at one instant into the words of the public API.</summary>
internal sealed class ProofMapping(LiveBay bay, ProofDesk desk, ApiMapping mapping, BayClock clock)
{
    /// <summary>The proof at the corner of a pad.</summary>
    public Wire.ProofView View(PadChannel pad)
    {
        var (proof, refused) = desk.At(pad.Corner);
        var view = proof is null
            ? new Wire.ProofView { State = Wire.ProofState.None, SerialNumber = pad.Standing.Identity?.SerialNumber ?? "", Corner = pad.Corner.ToWire() }
            : Recorded(proof);
        view.Stamp = mapping.Stamp(bay.Newest?.Seq ?? 0, clock.NowNs, 2.5 * ChangeNudges.AtLeastEvery.TotalMilliseconds);
        view.Cautions.AddRange(ProofCautions.All);
        if (refused is not null)
            view.Refused = Now(refused);
        if (proof is { State: ProofState.Measuring })
            FillLive(view, proof);
        return view;
    }

    /// <summary>What is on record of a proof, whatever the pad does now.</summary>
    public Wire.ProofView Recorded(ProofRecord proof)
    {
        var digest = ProofDigest.Of(proof.Flow);
        return new Wire.ProofView
        {
            Corner = proof.Corner.ToWire(),
            SerialNumber = proof.SerialNumber,
            State = State(proof.State),
            ProofId = $"{proof.Id}",
            BegunAt = Timestamp.FromDateTimeOffset(proof.BegunAt),
            BegunBy = proof.BegunBy,
            Points = { digest.Points.Select(Point) },
            Result = digest.Report is { } report ? ResultMapping.Result(report, proof.Flow.Plan.Before, Now) : null,
            Masses = { proof.Flow.Plan.Masses.Masses.Select(MassMapping.Record) },
            Ending = Ending(proof),
        };
    }

    public static Wire.ProofSummary Summary(ProofRecord proof) => new()
    {
        ProofId = $"{proof.Id}",
        SerialNumber = proof.SerialNumber,
        Corner = proof.Corner.ToWire(),
        State = State(proof.State),
        BegunAt = Timestamp.FromDateTimeOffset(proof.BegunAt),
        BegunBy = proof.BegunBy,
        Points = (uint)proof.Flow.Readings.Count,
        Ending = Ending(proof),
    };

    private void FillLive(Wire.ProofView view, ProofRecord proof)
    {
        var (flow, bench) = (proof.Flow, BenchReading.Of(bay, proof));
        var answer = bench.Offer(bay, flow);
        view.Ready = answer.Accepted;
        if (!answer.Accepted)
            view.WaitingFor = Now(answer.Refusals[0]);
        view.Step = StepMapping.Step(flow, clock.ToUtc(clock.NowNs));
        if (bench.Seen is { } seen)
            view.Reading = StepMapping.Reading(flow, seen);
    }

    private Wire.Diagnostic Now(Diagnostic refusal) => mapping.Told(refusal with { SinceNs = clock.NowNs });

    private static Wire.ProofPoint Point(ProgressPoint point)
    {
        var (step, reading) = point.Taken;
        var result = new Wire.ProofPoint
        {
            Number = (uint)point.Number,
            Stage = StepMapping.Stage(step.Stage),
            Run = (uint)step.Run,
            WayDown = step.Way == LoadingWay.Down,
            Load = MassMapping.Stack(step.Load),
            Spot = step.Spot,
            Time = Timestamp.FromDateTimeOffset(reading.Time),
            Counts = point.Counts,
            CellCounts = { reading.CellCounts },
        };
        if (point.LoadKg is { } kg)
            result.LoadKg = kg;
        if (point.ReadKg is { } read)
            result.ReadKg = read;
        if (point.ResidualKg is { } residual)
            result.ResidualKg = residual;
        return result;
    }

    private static Wire.ProofEnding? Ending(ProofRecord proof) => proof.Flow.Ending is not { } ending ? null : new Wire.ProofEnding
    {
        Time = Timestamp.FromDateTimeOffset(ending.Time),
        Who = ending.Who,
        Reason = proof.Calibration?.Note ?? ending.Reason,
        CalibrationId = proof.Calibration?.Calibration.Identity ?? "",
    };

    private static Wire.ProofState State(ProofState state) => state switch
    {
        ProofState.Measuring => Wire.ProofState.Measuring,
        ProofState.Review => Wire.ProofState.Review,
        ProofState.Adopted => Wire.ProofState.Adopted,
        ProofState.Rejected => Wire.ProofState.Rejected,
        ProofState.Abandoned => Wire.ProofState.Abandoned,
        _ => Wire.ProofState.Unspecified,
    };
}
