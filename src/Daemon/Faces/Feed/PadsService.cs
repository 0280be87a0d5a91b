using Grpc.Core;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Contract;
using ScaleLink.Daemon.Runtime;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Faces.Feed;

/// <summary>The pads and their health over gRPC.</summary>
internal sealed class PadsService(LiveBay bay, PadsList pads, BayClock clock, TimeProvider time) : Wire.Pads.PadsBase
{
    private const double DefaultListening = 10;
    private const int QueuedSamples = 4096;

    public override Task<Wire.ListPadsResponse> ListPads(Wire.ListPadsRequest request, ServerCallContext context) => Task.FromResult(pads.Now());

    public override async Task WatchPads(Wire.WatchPadsRequest request, IServerStreamWriter<Wire.ListPadsResponse> responses, ServerCallContext context)
    {
        using var changes = ChangeNudges.Of(bay.Pads, time);
        await foreach (var _ in changes.Items.ReadAllAsync(context.CancellationToken))
            await responses.WriteAsync(pads.Now(), context.CancellationToken);
    }

    public override async Task<Wire.PadDiagnosis> DiagnosePad(Wire.DiagnosePadRequest request, ServerCallContext context)
    {
        var seconds = request.HasSeconds ? request.Seconds : DefaultListening;
        if (seconds is not (>= 2 and <= 60))
            throw ApiErrors.BadRequest(ServiceCodes.ListeningTimeNotOffered, "seconds", $"Listening for {seconds} s is not offered.", "Ask for 2 to 60.");
        var pad = bay.PadAt(request.Corner);
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
}
