using System.Globalization;
using Grpc.Core;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Contract;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.PadInterchange;

/// <summary>Pads interchanged under one car, over gRPC, for reading.</summary>
internal sealed class PadInterchangesService(InterchangeLedger interchanges, InterchangeMapping mapping, BayConfiguration bay, TimeProvider time) : Wire.PadInterchanges.PadInterchangesBase
{
    public override Task<Wire.InterchangeView> GetInterchange(Wire.GetInterchangeRequest request, ServerCallContext context) =>
        Task.FromResult(request.HasInterchangeId ? mapping.Recorded(Find(request.InterchangeId)) : mapping.Now());

    public override Task<Wire.ListInterchangesResponse> ListInterchanges(Wire.ListInterchangesRequest request, ServerCallContext context) =>
        Task.FromResult(new Wire.ListInterchangesResponse { PadInterchanges = { interchanges.All().Reverse().Select(mapping.Recorded) } });

    public override Task<Wire.ExportedFile> ExportInterchange(Wire.ExportInterchangeRequest request, ServerCallContext context)
    {
        if (request.Format is not (Wire.ExportFormat.Csv or Wire.ExportFormat.Json or Wire.ExportFormat.Html))
            throw ApiErrors.BadRequest(ServiceCodes.FormatNotOffered, "format", "That format is not offered.", "Ask for CSV, JSON or HTML.");
        return Task.FromResult(new InterchangeSheet(mapping.Recorded(Find(request.InterchangeId)), bay.Bay, time.GetUtcNow()).As(request.Format));
    }

    private InterchangeRecord Find(string id) =>
        (long.TryParse(id, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? interchanges.All().FirstOrDefault(r => r.Id == number) : null)
        ?? throw ApiErrors.NotFound(CalibrationCodes.NoInterchangeRunning, $"There is no pad interchange {PlainText.Clean(id, 20)}.", "List them: scalelink calibrations pad-interchange list.");
}
