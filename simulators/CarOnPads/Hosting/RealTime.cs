using CarOnPads.Bench;
using CarOnPads.Control;

namespace CarOnPads.Hosting;

/// <summary>
/// Drives a bay with real time. Simulated time follows the time since the start, so the mean rate stays exact. A host that
/// was held up catches up in bunches that a serial buffer can take: all at once would overflow it and lose what was late.
/// </summary>
sealed class RealTime(Bay bay, ControlServer control, TimeProvider time)
{
    // Five times real time while catching up: a pseudo-terminal holds 4 kB, a tenth of a second of the fastest pad.
    const double LongestBunch = 0.02;

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
            bay.AdvanceTo(Math.Min(time.GetElapsedTime(start).TotalSeconds, bay.Time + LongestBunch));
            control.Serve(bay);
        }
    }
}
