using System.Diagnostics;

namespace Shared.Rig;

/// <summary>Waits for something to become true.</summary>
internal static class Wait
{
    private const int PollMs = 20;

    /// <summary>For what has to happen, and is not judged by when: long enough for a machine that has much else to do.</summary>
    public static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    /// <summary>How long it took; fails after the limit.</summary>
    public static TimeSpan Until(Func<bool> condition, TimeSpan within, string what) => Until(condition, within, () => what);

    /// <summary>The same; what to say is asked for when it has failed.</summary>
    public static TimeSpan Until(Func<bool> condition, TimeSpan within, Func<string> what)
    {
        var watch = Stopwatch.StartNew();
        while (!condition())
        {
            Assert.True(watch.Elapsed < within, $"Not within {within.TotalSeconds:0.#} s: {what()}");
            Thread.Sleep(PollMs);
        }

        return watch.Elapsed;
    }
}
