using Grpc.Core;
using ScaleLink.Daemon.Contract;
using ScaleLink.Measure;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.SetupSheets;

/// <summary>What changes setup sheets, over gRPC. Each step is in the ledger before it is answered.</summary>
internal sealed class SetupSheetControlService(SheetDesk sheets) : Wire.SetupSheetControl.SetupSheetControlBase
{
    private const int LongestNote = 400;

    public override Task<Wire.SetupSheet> SaveSheet(Wire.SaveSheetRequest request, ServerCallContext context)
    {
        var who = ApiErrors.Who(request.Who);
        var key = SetupSheetsService.Key(request.Key);
        var draft = SheetDraft.Of(request.Changes.Select(c => (c.Slot, c.Value)), request.CarFile, key.Car, Units.Named(request.Units), PlainText.Clean(request.Note, LongestNote), !request.NotOnCar);
        return Answer(sheets.Save(key, request.SeenVersion, draft, who));
    }

    public override Task<Wire.SetupSheet> CopySheet(Wire.CopySheetRequest request, ServerCallContext context)
    {
        var who = ApiErrors.Who(request.Who);
        var (from, to) = (request.From ?? new(), SetupSheetsService.Key(request.To));
        var source = sheets.Find(SetupSheetsService.Key(from.Key), from.HasVersion ? (int)Math.Min(from.Version, int.MaxValue) : null);
        if (source.Key.Car != to.Car)
            throw ApiErrors.BadRequest(SheetCodes.NotFound, "to.car", "A setup sheet is copied to another track or driver, not to another car.", "Name the same car; of another one take its car file.");
        return Answer(sheets.Save(to, request.SeenVersion, new SheetDraft([], PlainText.Clean(request.Note, LongestNote), source.Words, OnCar: false) { Whole = source.Content }, who));
    }

    public override Task<Wire.SetupSheet> FitSheet(Wire.FitSheetRequest request, ServerCallContext context) =>
        Answer(sheets.Fit(SetupSheetsService.Key(request.Key), request.HasVersion ? (int)Math.Min(request.Version, int.MaxValue) : null, ApiErrors.Who(request.Who)));

    private Task<Wire.SetupSheet> Answer(SheetVersion sheet) => Task.FromResult(SheetMapping.Sheet(sheet, sheets.State, withValues: true));
}
