using System.Globalization;
using Grpc.Core;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Proving;
using ScaleLink.Daemon.Publishing.Reports;
using ScaleLink.Daemon.Runtime;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Publishing.Grpc.Rotations;

/// <summary>Pads moved round under one car, over gRPC, for reading.</summary>
internal sealed class RotationsService(RotationLedger rotations, RotationMapping mapping, BayConfiguration bay, TimeProvider time) : Wire.Rotations.RotationsBase
{
    public override Task<Wire.RotationView> GetRotation(Wire.GetRotationRequest request, ServerCallContext context) =>
        Task.FromResult(request.HasRotationId ? mapping.Recorded(Find(request.RotationId)) : mapping.Now());

    public override Task<Wire.ListRotationsResponse> ListRotations(Wire.ListRotationsRequest request, ServerCallContext context) =>
        Task.FromResult(new Wire.ListRotationsResponse { Rotations = { rotations.All().Reverse().Select(mapping.Recorded) } });

    public override Task<Wire.ExportedFile> ExportRotation(Wire.ExportRotationRequest request, ServerCallContext context)
    {
        if (request.Format is not (Wire.ExportFormat.Csv or Wire.ExportFormat.Json or Wire.ExportFormat.Html))
            throw ApiErrors.BadRequest(ServiceCodes.FormatNotOffered, "format", "That format is not offered.", "Ask for CSV, JSON or HTML.");
        return Task.FromResult(new RotationSheet(mapping.Recorded(Find(request.RotationId)), bay.Bay, time.GetUtcNow()).As(request.Format));
    }

    private RotationRecord Find(string id) =>
        (long.TryParse(id, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? rotations.All().FirstOrDefault(r => r.Id == number) : null)
        ?? throw ApiErrors.NotFound(CalibrationCodes.NoInterchangeRunning, $"There is no rotation {PeerText.Clean(id, 20)}.", "See which there are: scalelink proofs rotation list.");
}
