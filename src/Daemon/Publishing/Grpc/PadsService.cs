using Grpc.Core;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Publishing.Grpc;

/// <summary>The pads and their health over gRPC.</summary>
internal sealed class PadsService(LiveBay bay, PadsList pads, TimeProvider time) : Wire.Pads.PadsBase
{
    public override Task<Wire.ListPadsResponse> ListPads(Wire.ListPadsRequest request, ServerCallContext context) => Task.FromResult(pads.Now());

    public override async Task WatchPads(Wire.WatchPadsRequest request, IServerStreamWriter<Wire.ListPadsResponse> responses, ServerCallContext context)
    {
        using var changes = new PadChanges(bay.Pads, time);
        await foreach (var _ in changes.Items.ReadAllAsync(context.CancellationToken))
            await responses.WriteAsync(pads.Now(), context.CancellationToken);
    }
}
