using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Measure;

namespace ScaleLink.Daemon.Workflows.Zeros;

/// <summary>Looks after the zeros while the car is off the pads: checks each empty pad once, and tracks it where that is asked for.</summary>
internal sealed class ZeroKeeping(LiveBay bay, BayConfiguration configuration, IZeroStore store, BayClock clock, ILogger<ZeroKeeping> log) : BackgroundService
{
    private const long StepNs = Nanoseconds.PerSecond;
    private const int QueuedReadings = 40;

    private readonly Dictionary<Corner, PadZeroWatch> _watches =
        bay.Pads.ToDictionary(p => p.Corner, p => new PadZeroWatch(p, configuration.ZeroTracking, configuration.Weigh.RaisedBelowKg, store, clock));

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var readings = bay.Readings.Subscribe(QueuedReadings);
        var due = 0L;
        await foreach (var reading in readings.Items.ReadAllAsync(stoppingToken))
        {
            if (reading.AtNs < due)
                continue;
            due = reading.AtNs + StepNs;
            foreach (var watch in _watches.Values)
                Look(watch);
        }
    }

    private void Look(PadZeroWatch watch)
    {
        try
        {
            watch.Look();
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            // A ledger that cannot be written must not end the looking.
            log.LogError(e, "The zero of {Corner} could not be looked after", watch.Corner);
        }
    }
}
