using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Workflows.Zeros;

/// <summary>Looks after the zeros while the car is off the pads: checks each empty pad once, and tracks it where that is asked for.</summary>
internal sealed class ZeroKeeping(LiveBay bay, BayConfiguration configuration, IZeroStore store, BayClock clock, ILogger<ZeroKeeping> log) : BackgroundService
{
    private const long StepNs = Nanoseconds.PerSecond;
    private const int QueuedReadings = 40;

    // A ledger that cannot be written must not end the looking.
    private readonly IReadOnlyList<(PadZeroWatch Watch, RepeatedTrouble Trouble)> _watches =
        [.. bay.Pads.Select(p => (new PadZeroWatch(p, configuration.ZeroTracking, configuration.Weigh.RaisedBelowKg, store, clock), new RepeatedTrouble($"Looking after the zero of {p.Corner}", log)))];

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var readings = bay.Readings.Subscribe(QueuedReadings);
        var due = 0L;
        await foreach (var reading in readings.Items.ReadAllAsync(stoppingToken))
        {
            if (reading.AtNs < due)
                continue;
            due = reading.AtNs + StepNs;
            foreach (var (watch, trouble) in _watches)
                trouble.Try(watch.Look);
        }
    }
}
