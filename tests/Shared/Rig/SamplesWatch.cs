using Grpc.Core;
using ScaleLink.Api.V1;

namespace Shared.Rig;

/// <summary>Collects every sample of the sample feed: the instant of each and its load.</summary>
internal sealed class SamplesWatch : IDisposable
{
    private readonly CancellationTokenSource _stop = new();
    private readonly Dictionary<Corner, List<(long AtNs, double? LoadKg)>> _samples = [];
    private readonly Task _reading;

    public SamplesWatch(DaemonProcess daemon) => _reading = Read(daemon);

    /// <summary>Instant of the newest sample of a pad, ns on the daemon's clock.</summary>
    public long NewestNs(Corner corner) => Of(corner) is { Count: > 0 } samples ? samples[^1].AtNs : 0;

    public IReadOnlyList<(long AtNs, double? LoadKg)> Of(Corner corner)
    {
        lock (_samples)
            return _samples.TryGetValue(corner, out var samples) ? [.. samples] : [];
    }

    /// <summary>The longest time between two samples of a pad since an instant, ms.</summary>
    public double LongestGapMs(Corner corner, long sinceNs)
    {
        var instants = Of(corner).Select(s => s.AtNs).Where(at => at >= sinceNs).ToList();
        return instants.Count < 2 ? double.PositiveInfinity : instants.Zip(instants.Skip(1), (a, b) => (b - a) / 1e6).Max();
    }

    public void Dispose()
    {
        _stop.Cancel();
        _reading.Wait(TimeSpan.FromSeconds(5));
        _stop.Dispose();
    }

    private async Task Read(DaemonProcess daemon)
    {
        try
        {
            using var call = daemon.Feed.WatchSamples(new WatchSamplesRequest(), cancellationToken: _stop.Token);
            await foreach (var batch in call.ResponseStream.ReadAllAsync(_stop.Token))
                Keep(batch);
        }
        catch (RpcException)
        {
            // The watch was ended: what was received stays.
        }
    }

    private void Keep(SampleBatch batch)
    {
        lock (_samples)
        {
            if (!_samples.TryGetValue(batch.Corner, out var samples))
                _samples[batch.Corner] = samples = [];
            samples.AddRange(batch.Samples.Select(s => (s.MonotonicNs, s.HasLoadKg ? s.LoadKg : (double?)null)));
        }
    }
}
