using Grpc.Core;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Pipeline;
using ScaleLink.Daemon.Proving;
using ScaleLink.Daemon.Runtime;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Publishing.Grpc.Proofs;

/// <summary>What proves pads and puts calibrations into force, over gRPC.</summary>
internal sealed class ProofControlService(LiveBay bay, ProofDesk desk, CalibrationShelf shelf, PadRecords records, ProofMapping mapping) : Wire.ProofControl.ProofControlBase
{
    private const int LongestName = 64;
    private const int LongestReason = 500;

    public override Task<Wire.ProofView> StartProof(Wire.StartProofRequest request, ServerCallContext context) =>
        Do(request.Corner, pad => desk.Start(PlanReading.Plan(request, pad, records.Here), Who(request.Who)));

    public override Task<Wire.ProofView> RecordPoint(Wire.RecordPointRequest request, ServerCallContext context) =>
        Do(request.Corner, pad => desk.Record(pad.Corner, (int)request.StepNumber, Who(request.Who)));

    public override Task<Wire.ProofView> SkipPoint(Wire.SkipPointRequest request, ServerCallContext context) =>
        Do(request.Corner, pad => desk.Skip(pad.Corner, (int)request.StepNumber, Who(request.Who)));

    public override Task<Wire.ProofView> RepeatPoint(Wire.RepeatPointRequest request, ServerCallContext context) =>
        Do(request.Corner, pad => desk.Repeat(pad.Corner, request.HasRun ? (int)request.Run : null, Who(request.Who)));

    public override Task<Wire.ProofView> FinishMeasuring(Wire.FinishMeasuringRequest request, ServerCallContext context) =>
        Do(request.Corner, pad => desk.Finish(pad.Corner, Who(request.Who)));

    public override Task<Wire.ProofView> AdoptProof(Wire.AdoptProofRequest request, ServerCallContext context) =>
        Do(request.Corner, pad => desk.Adopt(pad.Corner, Who(request.Who), Reason(request.Note)));

    public override Task<Wire.ProofView> RejectProof(Wire.RejectProofRequest request, ServerCallContext context) =>
        Do(request.Corner, pad => desk.End(pad.Corner, finished: true, Who(request.Who), Required(request.Reason)));

    public override Task<Wire.ProofView> AbandonProof(Wire.AbandonProofRequest request, ServerCallContext context) =>
        Do(request.Corner, pad => desk.End(pad.Corner, finished: false, Who(request.Who), Reason(request.Reason)));

    public override Task<Wire.CalibrationSummary> ReadoptCalibration(Wire.ReadoptCalibrationRequest request, ServerCallContext context)
    {
        var older = shelf.Find(request.Id).Adopted ?? throw new StepRefusedException(CalibrationCodes.CalibrationInForce.Because("it comes from the bay file"));
        desk.Readopt(older, Who(request.Who), Reason(request.Note));
        return Task.FromResult(CalibrationMapping.Summary(shelf.Find(older.Calibration.Identity)));
    }

    private Task<Wire.ProofView> Do(Wire.Corner corner, Action<PadChannel> act)
    {
        var pad = bay.PadAt(corner);
        act(pad);
        return Task.FromResult(mapping.View(pad));
    }

    private static string Who(string who) => PeerText.Clean(who, LongestName) is { Length: > 0 } name ? name : throw new StepRefusedException(CalibrationCodes.NameOrReasonMissing.Because("who"));

    private static string Reason(string reason) => PeerText.Clean(reason, LongestReason);

    private static string Required(string reason) => Reason(reason) is { Length: > 0 } text ? text : throw new StepRefusedException(CalibrationCodes.NameOrReasonMissing.Because("reason"));
}
