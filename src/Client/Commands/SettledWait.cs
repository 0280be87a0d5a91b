using System.CommandLine;
using ScaleLink.Client.Connection;

namespace ScaleLink.Client.Commands;

/// <summary>The option of every command that weighs: waits until the car has settled. Silence of the feed and a car that moves once more cost time, not the command.</summary>
internal static class SettledWait
{
    /// <summary>The option.</summary>
    public static Option<double> Option() => new("--wait") { Description = "Waits so many seconds for the car to settle.", HelpName = "SECONDS" };

    /// <summary>Asks once the reading is ready for the record; when the time is over it is asked for all the same, since the daemon says best what is missing.</summary>
    /// <param name="daemon">The daemon.</param>
    /// <param name="time">Of the program.</param>
    /// <param name="seconds">How long at most; 0 asks at once.</param>
    /// <param name="ask">Puts the reading on record.</param>
    /// <param name="stop">Ends it.</param>
    public static async Task<T> Ask<T>(DaemonConnection daemon, TimeProvider time, double seconds, Func<CancellationToken, Task<T>> ask, CancellationToken stop)
    {
        using var limit = TimeLimit.Start(seconds, time, stop);
        while (seconds > 0 && await IsReady(daemon, limit.Token, stop))
        {
            try
            {
                return await ask(stop);
            }
            catch (ClientException e) when (e.Diagnostic.Code == SessionCodes.NotReady && !limit.IsCancellationRequested)
            {
                // It moved in that moment: nothing is on record, and there is time left.
            }
        }

        return await ask(stop);
    }

    // False when the time is over.
    private static async Task<bool> IsReady(DaemonConnection daemon, CancellationToken limit, CancellationToken stop)
    {
        try
        {
            await foreach (var view in new LoadsFeed(daemon).WithCancellation(limit))
                if (view is { IsNew: true, Freshness: Freshness.Live, Message.WeighingReady: true })
                    return true;
        }
        catch (OperationCanceledException) when (!stop.IsCancellationRequested)
        {
            // The time is over.
        }

        return false;
    }
}
