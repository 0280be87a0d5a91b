using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Bay;

/// <summary>
/// The heartbeat of the pipeline: watches for silence, weighs each block as soon as it is complete, and publishes.
/// A thread of its own that waits on a handle: a timer of the pool at this pace keeps the pool's threads spinning and costs several times as much.
/// </summary>
internal sealed class WeighingLoop(LiveBay bay, BayWeigher weigher, BayClock clock, NoiseLedger noise, ILogger<WeighingLoop> log) : IHostedService, IDisposable
{
    private static readonly TimeSpan Beat = TimeSpan.FromMilliseconds(10);
    private static readonly TimeSpan StopWithin = TimeSpan.FromSeconds(2);
    private const long KeepNoiseEveryNs = 600 * Nanoseconds.PerSecond;

    private readonly RepeatedTrouble _keeping = new("Keeping the learned noise of the pads", log);
    private Task _kept = Task.CompletedTask;

    private readonly ManualResetEvent _stop = new(false);
    private Thread? _thread;
    private long _noiseKeptNs;

    public Task StartAsync(CancellationToken cancellationToken)
    {
        _thread = new Thread(Run) { IsBackground = true, Name = "weighing" };
        _thread.Start();
        return Task.CompletedTask;
    }

    public Task StopAsync(CancellationToken cancellationToken)
    {
        End();
        return Task.CompletedTask;
    }

    // A start that fails elsewhere disposes without stopping first.
    public void Dispose()
    {
        End();
        _stop.Dispose();
    }

    private void End()
    {
        _stop.Set();
        _thread?.Join(StopWithin);
        _thread = null;
    }

    private void Run()
    {
        var blocks = new BlockClock(bay.Pads, clock);
        while (!_stop.WaitOne(Beat))
        {
            try
            {
                Tick(blocks);
            }
            catch (Exception e) when (e is not OutOfMemoryException)
            {
                // One bad block must not stop the bay.
                log.LogError(e, "A block could not be weighed");
                weigher.Interrupt();
            }
        }

        KeepNoise();
        _kept.Wait(StopWithin);
    }

    private void Tick(BlockClock blocks)
    {
        foreach (var pad in bay.Pads)
            pad.Tick(clock.NowNs);
        while (blocks.TryNext(out var from, out var to, out var skipped))
        {
            if (skipped)
                weigher.Interrupt();
            bay.Publish(weigher.Weigh(from, to));
        }

        if (clock.NowNs - _noiseKeptNs < KeepNoiseEveryNs)
            return;
        KeepNoise();
    }

    // Elsewhere: a disk may be slow or full, and the next block is due in 50 ms.
    private void KeepNoise()
    {
        _noiseKeptNs = clock.NowNs;
        var learned = weigher.NoiseKg;
        if (_kept.IsCompleted)
            _kept = Task.Run(() => _keeping.Try(() => noise.Keep(learned)));
    }
}
