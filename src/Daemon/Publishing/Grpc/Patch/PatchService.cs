using Grpc.Core;
using ScaleLink.Daemon.Patch;
using ScaleLink.Measure;
using ScaleLink.Weighing.Patch;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Publishing.Grpc;

/// <summary>The flat patch over gRPC.</summary>
internal sealed class PatchService(PatchDesk desk, PatchMapping mapping) : Wire.Patch.PatchBase
{
    public override Task<Wire.PatchReport> GetPatch(Wire.GetPatchRequest request, ServerCallContext context) => Task.FromResult(mapping.Report());

    public override Task<Wire.PatchReport> CheckSurvey(Wire.CheckSurveyRequest request, ServerCallContext context)
    {
        var survey = PatchMapping.Survey(request.Survey);
        var report = mapping.Report(survey.Adjust(), desk.State.On);
        report.Note = survey.Note;
        return Task.FromResult(report);
    }

    public override Task<Wire.ShimPlan> PlanShims(Wire.PlanShimsRequest request, ServerCallContext context)
    {
        var survey = request.Survey is { } given ? PatchMapping.Survey(given).Adjust() : desk.State.Survey?.Survey
            ?? throw ApiErrors.NotNow(PatchCodes.NoHeightMeasurement, "The patch has not been surveyed.", "Send a survey, or save one first.");
        var plan = ShimSearch.Find(survey.HeightsMm, [.. request.Shims.Select(s => new ShimSet(s.ThicknessMm, (int)Math.Min(s.Pieces, 1000)))], request.HasSpreadMm ? request.SpreadMm : 0.5);
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
