using Grpc.Core;
using ScaleLink.Daemon.Contract;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.PadInterchange;

/// <summary>The steps of interchanging the pads, over gRPC.</summary>
internal sealed class PadInterchangeControlService(InterchangeDesk desk, InterchangeMapping mapping) : Wire.PadInterchangeControl.PadInterchangeControlBase
{
    private const int LongestRemark = 500;

    public override Task<Wire.InterchangeView> RecordPlacement(Wire.RecordPlacementRequest request, ServerCallContext context) =>
        Do(request.Who, who => desk.Record(who));

    public override Task<Wire.InterchangeView> ThrowPlacementAway(Wire.ThrowPlacementAwayRequest request, ServerCallContext context) =>
        Do(request.Who, who => desk.ThrowAway((int)Math.Min(request.Number, int.MaxValue), who));

    public override Task<Wire.InterchangeView> FinishInterchange(Wire.FinishInterchangeRequest request, ServerCallContext context) =>
        Do(request.Who, who => desk.Finish(who, PlainText.Clean(request.Note, LongestRemark)));

    public override Task<Wire.InterchangeView> AbandonInterchange(Wire.AbandonInterchangeRequest request, ServerCallContext context) =>
        Do(request.Who, who => desk.Abandon(who, PlainText.Clean(request.Reason, LongestRemark)));

    private Task<Wire.InterchangeView> Do(string who, Action<string> step)
    {
        var name = ApiErrors.Who(who);
        step(name);
        return Task.FromResult(mapping.Now());
    }
}
