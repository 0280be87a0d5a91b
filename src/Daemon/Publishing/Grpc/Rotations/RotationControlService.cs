using Grpc.Core;
using ScaleLink.Daemon.Proving;
using ScaleLink.Daemon.Runtime;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Publishing.Grpc.Rotations;

/// <summary>The steps of moving the pads round, over gRPC.</summary>
internal sealed class RotationControlService(RotationDesk desk, RotationMapping mapping) : Wire.RotationControl.RotationControlBase
{
    private const int LongestRemark = 500;

    public override Task<Wire.RotationView> RecordPlacement(Wire.RecordPlacementRequest request, ServerCallContext context) =>
        Do(request.Who, who => desk.Record(who));

    public override Task<Wire.RotationView> ThrowPlacementAway(Wire.ThrowPlacementAwayRequest request, ServerCallContext context) =>
        Do(request.Who, who => desk.ThrowAway((int)Math.Min(request.Number, int.MaxValue), who));

    public override Task<Wire.RotationView> FinishRotation(Wire.FinishRotationRequest request, ServerCallContext context) =>
        Do(request.Who, who => desk.Finish(who, PeerText.Clean(request.Note, LongestRemark)));

    public override Task<Wire.RotationView> AbandonRotation(Wire.AbandonRotationRequest request, ServerCallContext context) =>
        Do(request.Who, who => desk.Abandon(who, PeerText.Clean(request.Reason, LongestRemark)));

    private Task<Wire.RotationView> Do(string who, Action<string> step)
    {
        var name = ApiErrors.Who(who);
        try
        {
            step(name);
            return Task.FromResult(mapping.Now());
        }
        catch (RefusedException refused)
        {
            throw ApiErrors.Refused(refused.Diagnostic);
        }
    }
}
