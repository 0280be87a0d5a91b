using Grpc.Core;
using ScaleLink.Daemon.Contract;
using ScaleLink.Daemon.Workflows.Cars;
using ScaleLink.Daemon.Workflows.WorkSessions;
using ScaleLink.Measure;
using ScaleLink.Weighing.SetupSheets;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.SetupSheets;

/// <summary>Setup sheets over gRPC, for reading.</summary>
internal sealed class SetupSheetsService(SheetDesk sheets, CarShelf cars, SessionLedger sessions) : Wire.SetupSheets.SetupSheetsBase
{
    private const uint MostListed = 100, MostAsked = 10_000;

    public override Task<Wire.ListSheetFieldsResponse> ListSheetFields(Wire.ListSheetFieldsRequest request, ServerCallContext context)
    {
        var list = new Wire.ListSheetFieldsResponse();
        list.Fields.AddRange(SheetFields.All.Select(SheetMapping.Field));
        return Task.FromResult(list);
    }

    public override Task<Wire.ListSheetsResponse> ListSheets(Wire.ListSheetsRequest request, ServerCallContext context)
    {
        var all = sheets.State;
        var list = new Wire.ListSheetsResponse();
        list.Sheets.AddRange(all.Sheets.Values.Select(versions => versions[^1])
            .Where(s => request.Car.Length == 0 || s.Key.Car == request.Car)
            .OrderBy(s => s.Key.Car, StringComparer.Ordinal).ThenBy(s => s.Key.Track, StringComparer.Ordinal).ThenBy(s => s.Key.Driver, StringComparer.Ordinal)
            .Select(s => SheetMapping.Sheet(s, all, withValues: false)));
        return Task.FromResult(list);
    }

    public override Task<Wire.ListSheetVersionsResponse> ListSheetVersions(Wire.ListSheetVersionsRequest request, ServerCallContext context)
    {
        var all = sheets.State;
        var versions = all.Of(sheets.Find(Key(request.Key), null).Key);
        var list = new Wire.ListSheetVersionsResponse { Total = (uint)versions.Count };
        list.Versions.AddRange(versions.Reverse().Take((int)Math.Min(request.HasMost ? request.Most : MostListed, MostAsked)).Select(v => SheetMapping.Sheet(v, all, withValues: false)));
        return Task.FromResult(list);
    }

    public override Task<Wire.SetupSheet> GetSheet(Wire.GetSheetRequest request, ServerCallContext context) => Task.FromResult(SheetMapping.Sheet(Find(request), sheets.State, withValues: true));

    public override Task<Wire.SheetNow> GetSheetNow(Wire.GetSheetNowRequest request, ServerCallContext context)
    {
        var car = (request.Car.Length == 0
            ? cars.InBay ?? throw ApiErrors.NotNow(CarCodes.NoCarInBay, "Nobody said which car stands in the bay.", "Choose one: Car on the page, or scalelink car use FILE. Or name the car.")
            : cars.Find(request.Car) ?? throw CarsService.NoSuchCar(request.Car)).Model.Name;
        var all = sheets.State;
        return Task.FromResult(SheetMapping.Now(car, SheetNow.Of(all.OnCar.GetValueOrDefault(car), car, sessions), all));
    }

    public override Task<Wire.SheetComparison> CompareSheets(Wire.CompareSheetsRequest request, ServerCallContext context) =>
        Task.FromResult(SheetMapping.Comparison(Find(request.First), Find(request.Second), sheets.State));

    public override Task<Wire.ExportedFile> ExportSheet(Wire.ExportSheetRequest request, ServerCallContext context)
    {
        var sheet = Find(request.Sheet);
        return Task.FromResult(request.Format switch
        {
            Wire.ExportFormat.Csv => SheetExport.File(sheet, "csv", "text/csv; charset=utf-8", SheetCsv.Of(sheet)),
            Wire.ExportFormat.Json => SheetExport.File(sheet, "json", "application/json; charset=utf-8", sheets.CarFile(sheet) + "\n"),
            Wire.ExportFormat.Html => SheetExport.File(sheet, "html", "text/html; charset=utf-8", SheetHtml.Of(sheet, Units.Named(request.Units))),
            _ => throw ApiErrors.BadRequest(SessionCodes.FormatMissing, "format", "No format is given.", "Ask for CSV, JSON or HTML."),
        });
    }

    internal static SheetKey Key(Wire.SheetKey? key) => SheetKey.Of(key?.Car ?? "", key?.Track ?? "", key?.Driver ?? "");

    private SheetVersion Find(Wire.GetSheetRequest? asked) => sheets.Find(Key(asked?.Key), asked is { HasVersion: true } ? (int)Math.Min(asked.Version, int.MaxValue) : null);
}
