using Grpc.Core;
using ScaleLink.Daemon.Pipeline;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Publishing.Grpc;

/// <summary>The live loads over gRPC.</summary>
internal sealed class FeedService(LiveBay bay, ApiMapping mapping, BayClock clock) : Wire.Feed.FeedBase
{
    private const double DefaultRateHz = 10;
    private const int QueuedReadings = 40;

    public override Task<Wire.Loads> GetLoads(Wire.GetLoadsRequest request, ServerCallContext context) =>
        Task.FromResult(bay.Newest is { } reading
            ? mapping.Loads(reading, new Pace(DefaultRateHz).MaxAgeMs, 0)
            : throw ApiErrors.NotYet());

    public override async Task WatchLoads(Wire.WatchLoadsRequest request, IServerStreamWriter<Wire.Loads> responses, ServerCallContext context)
    {
        var rate = request.HasRateHz ? request.RateHz : DefaultRateHz;
        if (rate is not (>= 0.1 and <= 20))
            throw ApiErrors.BadRequest("SL-411", "rate_hz", $"A rate of {rate} messages a second is not offered.", "Ask for 0.1 to 20.");
        var pace = new Pace(rate);
        using var subscription = bay.Readings.Subscribe(QueuedReadings);
        await foreach (var reading in subscription.Items.ReadAllAsync(context.CancellationToken))
        {
            if (pace.IsDue(reading))
                await responses.WriteAsync(mapping.Loads(reading, pace.MaxAgeMs, subscription.Dropped), context.CancellationToken);
        }
    }

    public override async Task WatchSamples(Wire.WatchSamplesRequest request, IServerStreamWriter<Wire.SampleBatch> responses, ServerCallContext context)
    {
        var pads = bay.Pads.Where(p => request.Corners.Count == 0 || request.Corners.Contains(ApiMapping.Corner(p.Corner))).ToList();
        using var streams = new SampleStreams(pads, clock.RunId);
        await foreach (var batch in streams.ReadAllAsync(context.CancellationToken))
            await responses.WriteAsync(batch, context.CancellationToken);
    }

    public override Task<Wire.GetClockResponse> GetClock(Wire.GetClockRequest request, ServerCallContext context) =>
        Task.FromResult(new Wire.GetClockResponse { MonotonicNs = clock.NowNs, RunId = clock.RunId });
}
