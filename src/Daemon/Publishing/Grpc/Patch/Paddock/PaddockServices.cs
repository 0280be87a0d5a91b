using System.Globalization;
using Grpc.Core;
using ScaleLink.Daemon.Paddock;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Publishing.Grpc;

/// <summary>The watch over empty pads over gRPC.</summary>
internal sealed class PaddockService(PaddockDesk desk) : Wire.Paddock.PaddockBase
{
    public override Task<Wire.PaddockView> GetPaddock(Wire.GetPaddockRequest request, ServerCallContext context) => Task.FromResult(PaddockMapping.View(desk.State));
}

/// <summary>What begins and ends a watch, over gRPC.</summary>
internal sealed class PaddockControlService(PaddockDesk desk) : Wire.PaddockControl.PaddockControlBase
{
    private const double UsualMinutes = 10;
    // Anything that goes onto four pads.
    private const double LightestKg = 50, HeaviestKg = 10_000;

    public override Task<Wire.PaddockView> StartPaddock(Wire.StartPaddockRequest request, ServerCallContext context)
    {
        var who = ApiErrors.Who(request.Who);
        var minutes = request.HasMinutes ? request.Minutes : UsualMinutes;
        if (!(minutes is >= PaddockDesk.Shortest and <= PaddockDesk.Longest))
            throw ApiErrors.BadRequest(SiteCheckCodes.InputUnusable, "minutes", string.Create(CultureInfo.InvariantCulture, $"A watch of {minutes} minutes is not usable."), $"Give {PaddockDesk.Shortest:0} to {PaddockDesk.Longest:0} minutes.");
        if (request.HasTotalKg && !(request.TotalKg is >= LightestKg and <= HeaviestKg))
            throw ApiErrors.BadRequest(SiteCheckCodes.InputUnusable, "total_kg", string.Create(CultureInfo.InvariantCulture, $"A car of {request.TotalKg} kg is not usable."), $"Give the total of the car, {LightestKg:0} to {HeaviestKg:0} kg.");
        desk.Start(minutes, request.HasTotalKg ? request.TotalKg : null, who);
        return Task.FromResult(PaddockMapping.View(desk.State));
    }

    public override Task<Wire.PaddockView> StopPaddock(Wire.StopPaddockRequest request, ServerCallContext context)
    {
        desk.Stop(ApiErrors.Who(request.Who));
        return Task.FromResult(PaddockMapping.View(desk.State));
    }
}
