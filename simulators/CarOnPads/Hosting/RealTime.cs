using CarOnPads.Control;

namespace CarOnPads.Hosting;

/// <summary>
/// Drives a bay with real time. Simulated time is always the time since the start, so a host that is late only sends
/// in larger bunches; nothing is lost and the mean rate stays exact.
/// </summary>
public sealed class RealTime(Bay bay, ControlServer control, TimeProvider time)
{
    static readonly TimeSpan s_beat = TimeSpan.FromMilliseconds(4);

    /// <summary>
    /// Runs on the calling thread until the bay is asked to end or the token says so. A thread of its own, because a
    /// timer's pool threads spin before they sleep, which at 250 beats a second costs more than the whole physics.
    /// </summary>
    public void Run(CancellationToken end)
    {
        var start = time.GetTimestamp();
        while (!bay.Ended && !end.WaitHandle.WaitOne(s_beat))
        {
            bay.AdvanceTo(time.GetElapsedTime(start).TotalSeconds);
            control.Serve(bay);
        }
    }
}
