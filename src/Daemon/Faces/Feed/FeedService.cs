using Google.Protobuf.WellKnownTypes;
using Grpc.Core;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Clocks;
using ScaleLink.Daemon.Contract;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Daemon.Workflows.WorkSessions;
using ScaleLink.Daemon.Workflows.WorkSessions.Service;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Faces.Feed;

/// <summary>The live loads over gRPC.</summary>
internal sealed class FeedService(LiveBay bay, ApiMapping mapping, PadsList pads, SessionAnswer session, SessionDesk desk, BayClock clock, ClockWatch wall, TimeProvider time) : Wire.Feed.FeedBase
{
    private const double DefaultRateHz = 10;

    public override Task<Wire.Loads> GetLoads(Wire.GetLoadsRequest request, ServerCallContext context) =>
        Task.FromResult(bay.Newest is { } reading
            ? mapping.Loads(reading, new Pace(DefaultRateHz).MaxAgeMs, 0)
            : throw ApiErrors.NotYet());

    public override async Task WatchLoads(Wire.WatchLoadsRequest request, IServerStreamWriter<Wire.Loads> responses, ServerCallContext context)
    {
        using var loads = Watch(request.HasRateHz ? request.RateHz : DefaultRateHz);
        while (await loads.WaitAsync(context.CancellationToken))
        {
            while (loads.TryTake(out var next))
                await responses.WriteAsync(next, context.CancellationToken);
        }
    }

    public override async Task WatchBay(Wire.WatchBayRequest request, IServerStreamWriter<Wire.BayEvent> responses, ServerCallContext context)
    {
        using var loads = Watch(request.HasRateHz ? request.RateHz : DefaultRateHz);
        using var changes = ChangeNudges.Of(bay.Pads, time);
        using var steps = new ChangeNudges(nudge => desk.Changed += nudge, nudge => desk.Changed -= nudge, time);
        await foreach (var next in BayEvents.Merge(loads, (changes, pads), (steps, session), context.CancellationToken))
            await responses.WriteAsync(next, context.CancellationToken);
    }

    public override async Task WatchSamples(Wire.WatchSamplesRequest request, IServerStreamWriter<Wire.SampleBatch> responses, ServerCallContext context)
    {
        var pads = bay.Pads.Where(p => request.Corners.Count == 0 || request.Corners.Contains(p.Corner.ToWire())).ToList();
        using var streams = new SampleStreams(pads, clock.StartId);
        await foreach (var batch in streams.ReadAllAsync(context.CancellationToken))
            await responses.WriteAsync(batch, context.CancellationToken);
    }

    public override Task<Wire.GetClockResponse> GetClock(Wire.GetClockRequest request, ServerCallContext context) =>
        Task.FromResult(new Wire.GetClockResponse { MonotonicNs = clock.NowNs, StartId = clock.StartId, Utc = Timestamp.FromDateTimeOffset(time.GetUtcNow()), Trust = Trust(wall.Trust) });

    private static Wire.ClockTrust Trust(ClockTrust trust) => trust switch
    {
        ClockTrust.Synchronised => Wire.ClockTrust.Synchronised,
        ClockTrust.FreeRunning => Wire.ClockTrust.FreeRunning,
        ClockTrust.Unset => Wire.ClockTrust.Unset,
        _ => Wire.ClockTrust.Unknown,
    };

    private PacedLoads Watch(double rateHz) => rateHz is >= 0.1 and <= 20
        ? new PacedLoads(bay, mapping, rateHz)
        : throw ApiErrors.BadRequest(ServiceCodes.RateNotOffered, "rate_hz", $"A rate of {rateHz} messages a second is not offered.", "Ask for 0.1 to 20.");
}
