using System.Globalization;
using Grpc.Core;
using ScaleLink.Daemon.Contract;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.SiteCheck;

/// <summary>The site check over gRPC.</summary>
internal sealed class SiteCheckService(SiteCheckDesk desk) : Wire.SiteChecks.SiteChecksBase
{
    public override Task<Wire.SiteCheckView> GetSiteCheck(Wire.GetSiteCheckRequest request, ServerCallContext context) => Task.FromResult(SiteCheckMapping.View(desk.State));
}

/// <summary>What begins and ends a watch, over gRPC.</summary>
internal sealed class SiteCheckControlService(SiteCheckDesk desk) : Wire.SiteCheckControl.SiteCheckControlBase
{
    private const double UsualMinutes = 10;
    // Anything that goes onto four pads.
    private const double LightestKg = 50, HeaviestKg = 10_000;

    public override Task<Wire.SiteCheckView> StartSiteCheck(Wire.StartSiteCheckRequest request, ServerCallContext context)
    {
        var who = ApiErrors.Who(request.Who);
        var minutes = request.HasMinutes ? request.Minutes : UsualMinutes;
        if (!(minutes is >= SiteCheckDesk.Shortest and <= SiteCheckDesk.Longest))
            throw ApiErrors.BadRequest(SiteCheckCodes.InputUnusable, "minutes", string.Create(CultureInfo.InvariantCulture, $"A watch of {minutes} minutes is not usable."), $"Give {SiteCheckDesk.Shortest:0} to {SiteCheckDesk.Longest:0} minutes.");
        if (request.HasTotalKg && !(request.TotalKg is >= LightestKg and <= HeaviestKg))
            throw ApiErrors.BadRequest(SiteCheckCodes.InputUnusable, "total_kg", $"A car of {Kg(request.TotalKg)} is not usable.", $"Give the total of the car, {BareKg(LightestKg):0} to {Kg(HeaviestKg):0}.");
        desk.Start(minutes, request.HasTotalKg ? request.TotalKg : null, who);
        return Task.FromResult(SiteCheckMapping.View(desk.State));
    }

    public override Task<Wire.SiteCheckView> StopSiteCheck(Wire.StopSiteCheckRequest request, ServerCallContext context)
    {
        desk.Stop(ApiErrors.Who(request.Who));
        return Task.FromResult(SiteCheckMapping.View(desk.State));
    }
}
