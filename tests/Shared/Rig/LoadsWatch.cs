using System.Collections.Concurrent;
using System.Diagnostics;
using Grpc.Core;
using ScaleLink.Api.V1;

namespace Shared.Rig;

/// <summary>Collects what a reader of the loads feed receives, with the instant of each message.</summary>
internal sealed class LoadsWatch : IDisposable
{
    private readonly CancellationTokenSource _stop = new();
    private readonly ConcurrentQueue<(long At, Loads Loads)> _received = new();
    private readonly Task _reading;

    public LoadsWatch(DaemonProcess daemon, double rateHz = 20) => _reading = Read(daemon, rateHz);

    public IReadOnlyList<(long At, Loads Loads)> Received => [.. _received];

    public Loads? Newest => _received.LastOrDefault().Loads;

    /// <summary>Time from <paramref name="since"/> to the first message after it that fits.</summary>
    public TimeSpan Until(long since, Func<Loads, bool> fits, TimeSpan within, string what)
    {
        (long At, Loads Loads) found = default;
        Wait.Until(() => (found = _received.FirstOrDefault(r => r.At >= since && fits(r.Loads))).Loads is not null, within, $"{what}; newest {Newest}");
        return Stopwatch.GetElapsedTime(since, found.At);
    }

    public void Dispose()
    {
        _stop.Cancel();
        _reading.Wait(TimeSpan.FromSeconds(5));
        _stop.Dispose();
    }

    private async Task Read(DaemonProcess daemon, double rateHz)
    {
        try
        {
            using var call = daemon.Feed.WatchLoads(new WatchLoadsRequest { RateHz = rateHz }, cancellationToken: _stop.Token);
            await foreach (var loads in call.ResponseStream.ReadAllAsync(_stop.Token))
                _received.Enqueue((Stopwatch.GetTimestamp(), loads));
        }
        catch (RpcException)
        {
            // The daemon went away or the watch was ended: what was received stays.
        }
    }
}
