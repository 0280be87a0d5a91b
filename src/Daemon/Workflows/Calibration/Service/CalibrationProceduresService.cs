using System.Globalization;
using Grpc.Core;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Contract;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Workflows.Calibration.Export;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.Calibration.Service;

/// <summary>Calibrations and calibration procedures over gRPC, for reading.</summary>
internal sealed class CalibrationProceduresService(LiveBay bay, ProcedureDesk desk, ProcedureLedger procedures, CalibrationShelf shelf, ProcedureMapping mapping, PadRecords records, BayConfiguration bayFile, TimeProvider time) : Wire.CalibrationProcedures.CalibrationProceduresBase
{
    // While a point is measured, its countdown is to be seen.
    private static readonly TimeSpan Beat = TimeSpan.FromMilliseconds(200);

    public override Task<Wire.ListCalibrationsResponse> ListCalibrations(Wire.ListCalibrationsRequest request, ServerCallContext context)
    {
        var wanted = bay.Pads.Where(p => request.Corners.Contains(p.Corner.ToWire())).Select(p => p.Standing.Identity?.SerialNumber)
            .Append(request.HasSerialNumber ? request.SerialNumber : null).OfType<string>().ToHashSet();
        var response = new Wire.ListCalibrationsResponse();
        if (wanted.Count > 0 || request.Corners.Count == 0)
            response.Calibrations.AddRange(shelf.All().Where(c => wanted.Count == 0 || wanted.Contains(c.Calibration.Pad)).Select(CalibrationMapping.Summary));
        return Task.FromResult(response);
    }

    public override Task<Wire.CalibrationDetail> GetCalibration(Wire.GetCalibrationRequest request, ServerCallContext context) => Answer(() =>
    {
        var shelved = shelf.Find(request.Id);
        var detail = new Wire.CalibrationDetail { Calibration = CalibrationMapping.Summary(shelved) };
        if (shelved.Adopted is { } adopted && procedures.Find(adopted.Procedure) is { } procedure)
        {
            var view = mapping.Recorded(procedure);
            detail.Points.AddRange(view.Points);
            detail.Result = view.Result;
        }

        return detail;
    });

    public override Task<Wire.CalibrationComparison> CompareCalibrations(Wire.CompareCalibrationsRequest request, ServerCallContext context) => Answer(() =>
    {
        var (before, now) = (shelf.Find(request.BeforeId), shelf.Find(request.NowId));
        return before.Calibration.Pad == now.Calibration.Pad
            ? CalibrationMapping.Comparison(before, now)
            : throw new StepRefusedException(CalibrationCodes.ReadingOfOtherPad.Because($"{before.Calibration.Pad} and {now.Calibration.Pad} are two pads"));
    });

    public override Task<Wire.ListProceduresResponse> ListProcedures(Wire.ListProceduresRequest request, ServerCallContext context)
    {
        var response = new Wire.ListProceduresResponse();
        response.CalibrationProcedures.AddRange(procedures.All(request.HasSerialNumber ? request.SerialNumber : null).Reverse().Select(ProcedureMapping.Summary));
        return Task.FromResult(response);
    }

    public override Task<Wire.PlannedProcedure> PlanProcedure(Wire.StartProcedureRequest request, ServerCallContext context) =>
        Answer(() => PlanMapping.Planned(request, bay.PadAt(request.Corner), records));

    public override async Task WatchProcedure(Wire.WatchProcedureRequest request, IServerStreamWriter<Wire.ProcedureView> responses, ServerCallContext context)
    {
        var pad = bay.PadAt(request.Corner);
        using var changes = new ChangeNudges(nudge => desk.Changed += nudge, nudge => desk.Changed -= nudge, time, Beat);
        var (procedure, writtenAt) = (desk.At(pad.Corner), long.MinValue);
        await foreach (var _ in changes.Items.ReadAllAsync(context.CancellationToken))
        {
            var now = desk.At(pad.Corner);
            // Nothing moves while nobody measures; a word now and then says that the daemon is there.
            var isDue = writtenAt == long.MinValue || now != procedure || now.Procedure is { State: ProcedureState.Measuring } || time.GetElapsedTime(writtenAt) >= ChangeNudges.AtLeastEvery;
            if (!isDue)
                continue;
            await responses.WriteAsync(mapping.View(pad), context.CancellationToken);
            (procedure, writtenAt) = (now, time.GetTimestamp());
        }
    }

    public override Task<Wire.ExportedFile> ExportProcedure(Wire.ExportProcedureRequest request, ServerCallContext context) => Answer(() =>
    {
        if (request.Format is not (Wire.ExportFormat.Csv or Wire.ExportFormat.Json or Wire.ExportFormat.Html))
            throw ApiErrors.BadRequest(ServiceCodes.FormatNotOffered, "format", "That format is not offered.", "Ask for CSV, JSON or HTML.");
        var number = request.WhatCase == Wire.ExportProcedureRequest.WhatOneofCase.CalibrationId
            ? shelf.Find(request.CalibrationId).Adopted?.Procedure
            : long.TryParse(request.ProcedureId, CultureInfo.InvariantCulture, out var id) ? id : null;
        var procedure = number is { } known ? procedures.Find(known) : null;
        return procedure is null
            ? throw new StepRefusedException(CalibrationCodes.CalibrationNotFound.Because("no calibration procedure is behind it"))
            : new ProcedureSheet(mapping.Recorded(procedure), bayFile.Bay, time.GetUtcNow()).As(request.Format);
    });

    private static Task<T> Answer<T>(Func<T> answer) => Task.FromResult(answer());
}
