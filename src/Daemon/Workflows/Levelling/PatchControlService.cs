using Grpc.Core;
using ScaleLink.Daemon.Contract;
using ScaleLink.Weighing.Levelling;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.Levelling;

/// <summary>What changes the patch, over gRPC.</summary>
internal sealed class PatchControlService(PatchDesk desk, PatchMapping mapping) : Wire.PatchControl.PatchControlBase
{
    public override Task<Wire.PatchReport> SaveHeightMeasurement(Wire.SaveHeightMeasurementRequest request, ServerCallContext context)
    {
        var who = ApiErrors.Who(request.Who);
        desk.Save(PatchMapping.HeightMeasurement(request.HeightMeasurement), who);
        return Task.FromResult(mapping.Report());
    }

    public override Task<Wire.PatchReport> ClearHeightMeasurement(Wire.ClearHeightMeasurementRequest request, ServerCallContext context)
    {
        desk.Clear(ApiErrors.Who(request.Who));
        return Task.FromResult(mapping.Report());
    }

    public override Task<Wire.PatchReport> SetCorrection(Wire.SetCorrectionRequest request, ServerCallContext context)
    {
        var who = ApiErrors.Who(request.Who);
        CorrectionKind? kind = request.Name switch
        {
            "slope" => CorrectionKind.Slope,
            "warp" => CorrectionKind.Warp,
            _ => null,
        };
        if (kind is not { } known)
            throw ApiErrors.BadRequest(PatchCodes.CorrectionUnknown, "name", $"There is no correction {PlainText.Clean(request.Name, 20)} of the patch.", "Name slope or warp; tilt is switched in the bay file, pad by pad.");
        desk.Set(known, request.On, who);
        return Task.FromResult(mapping.Report());
    }
}
