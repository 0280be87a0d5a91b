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
    private const double DefaultListening = 10;
    private const int QueuedSamples = 4096;
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

    public override async Task<Wire.PadDiagnosis> DiagnosePad(Wire.DiagnosePadRequest request, ServerCallContext context)
    {
        var seconds = request.HasSeconds ? request.Seconds : DefaultListening;
        if (seconds is not (>= 2 and <= 60))
            throw ApiErrors.BadRequest("SL-414", "seconds", $"Listening for {seconds} s is not offered.", "Ask for 2 to 60.");
        var pad = bay.Pads.FirstOrDefault(p => ApiMapping.Corner(p.Corner) == request.Corner)
            ?? throw ApiErrors.BadRequest("SL-413", "corner", "That corner has no pad here.", "Ask Pads.ListPads which corners there are.");
        return PadMapping.Diagnosis(pad.Snapshot(), PadDiagnosis.Of(await Listen(pad, TimeSpan.FromSeconds(seconds), context.CancellationToken)));
    }

    private async Task<List<TakenSample>> Listen(PadChannel pad, TimeSpan span, CancellationToken cancellation)
    {
        using var subscription = pad.Samples.Subscribe(QueuedSamples);
        var end = clock.NowNs + (long)span.TotalNanoseconds;
        using var over = new CancellationTokenSource(span, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(over.Token, cancellation);
        var samples = new List<TakenSample>();
        try
        {
            while (clock.NowNs < end)
                samples.Add(await subscription.Items.ReadAsync(either.Token));
        }
        catch (OperationCanceledException) when (!cancellation.IsCancellationRequested)
        {
            // The time is up; a pad that sent nothing is described too.
        }

        return samples;
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
