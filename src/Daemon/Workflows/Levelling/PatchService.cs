using Grpc.Core;
using ScaleLink.Daemon.Contract;
using ScaleLink.Measure;
using ScaleLink.Weighing.Levelling;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.Levelling;

/// <summary>The flat patch over gRPC.</summary>
internal sealed class PatchService(PatchDesk desk, PatchMapping mapping) : Wire.Patch.PatchBase
{
    public override Task<Wire.PatchReport> GetPatch(Wire.GetPatchRequest request, ServerCallContext context) => Task.FromResult(mapping.Report());

    public override Task<Wire.PatchReport> CheckHeightMeasurement(Wire.CheckHeightMeasurementRequest request, ServerCallContext context)
    {
        var heightMeasurement = PatchMapping.HeightMeasurement(request.HeightMeasurement);
        var report = mapping.Report(heightMeasurement.Adjust(), desk.State.On);
        report.Note = heightMeasurement.Note;
        return Task.FromResult(report);
    }

    public override Task<Wire.ShimPlan> PlanShims(Wire.PlanShimsRequest request, ServerCallContext context)
    {
        var heightMeasurement = request.HeightMeasurement is { } given ? PatchMapping.HeightMeasurement(given).Adjust() : desk.State.HeightMeasurement?.HeightMeasurement
            ?? throw ApiErrors.NotNow(PatchCodes.NoHeightMeasurement, "The patch has not been measured.", "Send a height measurement, or save one first.");
        var plan = ShimSearch.Find(heightMeasurement.HeightsMm, [.. request.Shims.Select(s => new ShimSet(s.ThicknessMm, (int)Math.Min(s.Pieces, 1000)))], request.HasSpreadMm ? request.SpreadMm : 0.5, mapping.WheelContacts);
        var wire = new Wire.ShimPlan
        {
            HeightsAfterMm = plan.HeightsAfterMm.ToWire(),
            SpreadMm = plan.SpreadMm,
            Levels = plan.Levels,
            Finding = plan.Finding?.ToWire(),
            EffectAfter = mapping.EffectOf(plan.HeightsAfterMm),
        };
        foreach (var corner in Corners.All)
        {
            var stack = new Wire.ShimStack { Corner = corner.ToWire() };
            stack.ThicknessesMm.AddRange(plan.Stacks[corner]);
            wire.Stacks.Add(stack);
        }

        return Task.FromResult(wire);
    }
}
