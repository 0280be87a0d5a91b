using System.Threading.Channels;
using Grpc.Core;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Pipeline;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Publishing.Grpc;

/// <summary>The pads and their health over gRPC.</summary>
internal sealed class PadsService(LiveBay bay, BayConfiguration configuration, ApiMapping mapping, BayClock clock, TimeProvider time) : Wire.Pads.PadsBase
{
    private static readonly TimeSpan AtLeastEvery = TimeSpan.FromSeconds(1);
    private readonly PadMapping _pads = new(mapping);

    public override Task<Wire.ListPadsResponse> ListPads(Wire.ListPadsRequest request, ServerCallContext context) => Task.FromResult(List());

    public override async Task WatchPads(Wire.WatchPadsRequest request, IServerStreamWriter<Wire.ListPadsResponse> responses, ServerCallContext context)
    {
        // One pending nudge is enough: the list that follows it has everything.
        var nudges = Channel.CreateBounded<bool>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });
        void Nudge() => nudges.Writer.TryWrite(true);
        foreach (var pad in bay.Pads)
            pad.Changed += Nudge;
        try
        {
            using var heartbeat = time.CreateTimer(_ => Nudge(), null, TimeSpan.Zero, AtLeastEvery);
            await foreach (var _ in nudges.Reader.ReadAllAsync(context.CancellationToken))
                await responses.WriteAsync(List(), context.CancellationToken);
        }
        finally
        {
            foreach (var pad in bay.Pads)
                pad.Changed -= Nudge;
        }
    }

    private Wire.ListPadsResponse List()
    {
        var list = new Wire.ListPadsResponse
        {
            Bay = configuration.Bay,
            Stamp = mapping.Stamp(bay.Newest?.Seq ?? 0, clock.NowNs, 2.5 * AtLeastEvery.TotalMilliseconds),
        };
        list.Pads.AddRange(bay.Pads.Select(p => _pads.Pad(p.Snapshot())));
        return list;
    }
}
