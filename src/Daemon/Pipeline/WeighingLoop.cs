using ScaleLink.Daemon.Publishing;

namespace ScaleLink.Daemon.Pipeline;

/// <summary>The heartbeat of the pipeline: watches for silence, weighs each block as soon as it is complete, and publishes.</summary>
internal sealed class WeighingLoop(LiveBay bay, BayWeigher weigher, BayClock clock, TimeProvider time, ILogger<WeighingLoop> log) : BackgroundService
{
    private static readonly TimeSpan Beat = TimeSpan.FromMilliseconds(10);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        var blocks = new BlockClock(bay.Pads, clock);
        using var timer = new PeriodicTimer(Beat, time);
        while (await timer.WaitForNextTickAsync(stoppingToken))
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
    }
}
