using ScaleLink.Daemon.Bay;

namespace ScaleLink.Daemon.Workflows.SiteCheck;

/// <summary>Shows every reading to the desk where the empty pads are watched.</summary>
internal sealed class SiteCheckKeeping(LiveBay bay, SiteCheckDesk desk, ILogger<SiteCheckKeeping> log) : BackgroundService
{
    private const int QueuedReadings = 40;

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var readings = bay.Readings.Subscribe(QueuedReadings);
        try
        {
            await foreach (var reading in readings.Items.ReadAllAsync(stoppingToken))
                Try(() => desk.Look(reading));
        }
        finally
        {
            Try(desk.Close);
        }
    }

    private void Try(Action act)
    {
        try
        {
            act();
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            // A ledger that cannot be written must not end the looking.
            log.LogError(e, "The site check could not go on");
        }
    }
}
