using CarOnPads.Control;

namespace CarOnPads.Hosting;

/// <summary>
/// Drives a bay with real time. Simulated time is always the time since the start, so a host that is late only sends
/// in larger bunches; nothing is lost and the mean rate stays exact.
/// </summary>
public sealed class RealTime(Bay bay, ControlServer control, TimeProvider time)
{
    static readonly TimeSpan s_beat = TimeSpan.FromMilliseconds(4);

    /// <summary>Runs until the bay is asked to end or the token says so.</summary>
    public async Task RunAsync(CancellationToken cancel)
    {
        using var beat = new PeriodicTimer(s_beat, time);
        var start = time.GetTimestamp();
        try
        {
            while (!bay.Ended)
            {
                await beat.WaitForNextTickAsync(cancel);
                bay.AdvanceTo(time.GetElapsedTime(start).TotalSeconds);
                control.Serve(bay);
            }
        }
        catch (OperationCanceledException)
        {
            // Ctrl-C, SIGTERM or the parent's end: an ordinary stop.
        }
    }
}
