using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Workflows.SiteCheck;

/// <summary>Shows every reading to the desk where the empty pads are watched.</summary>
internal sealed class SiteCheckKeeping(LiveBay bay, SiteCheckDesk desk, ILogger<SiteCheckKeeping> log) : BackgroundService
{
    private const int QueuedReadings = 40;

    // A ledger that cannot be written must not end the looking.
    private readonly RepeatedTrouble _trouble = new("The site check", log);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var readings = bay.Readings.Subscribe(QueuedReadings);
        try
        {
            await foreach (var reading in readings.Items.ReadAllAsync(stoppingToken))
                _trouble.Try(() => desk.Look(reading));
        }
        finally
        {
            _trouble.Try(desk.Close);
        }
    }
}
