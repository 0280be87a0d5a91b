using Grpc.Core;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Contract;
using ScaleLink.Daemon.Journal;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.Calibration.Service;

/// <summary>What calibrates pads and puts calibrations into effect, over gRPC.</summary>
internal sealed class CalibrationProcedureControlService(LiveBay bay, ProcedureDesk desk, CalibrationShelf shelf, PadRecords records, ProcedureMapping mapping) : Wire.CalibrationProcedureControl.CalibrationProcedureControlBase
{
    private const int LongestName = 64;
    private const int LongestReason = 500;

    public override Task<Wire.ProcedureView> StartProcedure(Wire.StartProcedureRequest request, ServerCallContext context) =>
        Do(request.Corner, pad => desk.Start(PlanReading.Plan(request, pad, records), Who(request.Who)));

    public override Task<Wire.ProcedureView> RecordPoint(Wire.RecordPointRequest request, ServerCallContext context) =>
        Do(request.Corner, pad => desk.Record(pad.Corner, (int)request.StepNumber, Who(request.Who), Reason(request.Because)));

    public override Task<Wire.ProcedureView> SkipPoint(Wire.SkipPointRequest request, ServerCallContext context) =>
        Do(request.Corner, pad => desk.Skip(pad.Corner, (int)request.StepNumber, Who(request.Who)));

    public override Task<Wire.ProcedureView> RepeatPoint(Wire.RepeatPointRequest request, ServerCallContext context) =>
        Do(request.Corner, pad => desk.Repeat(pad.Corner, request.HasRepetition ? (int)request.Repetition : null, Who(request.Who)));

    public override Task<Wire.ProcedureView> FinishMeasuring(Wire.FinishMeasuringRequest request, ServerCallContext context) =>
        Do(request.Corner, pad => desk.Finish(pad.Corner, Who(request.Who)));

    public override Task<Wire.ProcedureView> AdoptCalibration(Wire.AdoptCalibrationRequest request, ServerCallContext context) =>
        Do(request.Corner, pad => desk.Adopt(pad.Corner, Who(request.Who), Reason(request.Note)));

    public override Task<Wire.ProcedureView> RejectCalibration(Wire.RejectCalibrationRequest request, ServerCallContext context) =>
        Do(request.Corner, pad => desk.End(pad.Corner, finished: true, Who(request.Who), Required(request.Reason)));

    public override Task<Wire.ProcedureView> AbandonProcedure(Wire.AbandonProcedureRequest request, ServerCallContext context) =>
        Do(request.Corner, pad => desk.End(pad.Corner, finished: false, Who(request.Who), Reason(request.Reason)));

    public override Task<Wire.CalibrationSummary> ReadoptCalibration(Wire.ReadoptCalibrationRequest request, ServerCallContext context)
    {
        var older = shelf.Find(request.Id).Adopted ?? throw new StepRefusedException(CalibrationCodes.CalibrationInEffect.Because("it comes from the bay file"));
        desk.Readopt(older, Who(request.Who), Reason(request.Note));
        return Task.FromResult(CalibrationMapping.Summary(shelf.Find(older.Calibration.Identity)));
    }

    private Task<Wire.ProcedureView> Do(Wire.Corner corner, Action<PadChannel> act)
    {
        var pad = bay.PadAt(corner);
        act(pad);
        return Task.FromResult(mapping.View(pad));
    }

    private static string Who(string who) => PlainText.Clean(who, LongestName) is { Length: > 0 } name ? name : throw new StepRefusedException(CalibrationCodes.NameOrReasonMissing.Because("who"));

    private static string Reason(string reason) => PlainText.Clean(reason, LongestReason);

    private static string Required(string reason) => Reason(reason) is { Length: > 0 } text ? text : throw new StepRefusedException(CalibrationCodes.NameOrReasonMissing.Because("reason"));
}
