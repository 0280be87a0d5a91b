namespace CarOnPads.Replay;

/// <summary>Drives a player with real time, from the moment when every port has a reader. A host that was held up catches up in small bunches.</summary>
sealed class PlayTime(Player player, double pace, TimeProvider time)
{
    const double LongestBunch = 0.02;
    const double NanosecondsPerSecond = 1e9;

    static readonly TimeSpan s_beat = TimeSpan.FromMilliseconds(2);

    /// <summary>Runs on the calling thread until the token says so; tells when all has been played, and then keeps the ports open.</summary>
    public void Run(Action over, CancellationToken end)
    {
        var isOver = false;
        var (begun, played) = (-Player.OpeningNs / NanosecondsPerSecond, 0.0);
        long? start = null;
        while (!end.WaitHandle.WaitOne(s_beat))
        {
            start ??= player.HasReaders ? time.GetTimestamp() : null;
            if (start is not { } since)
                continue;
            played = Math.Min(begun + time.GetElapsedTime(since).TotalSeconds, Math.Max(played, 0) + LongestBunch);
            if (played >= 0)
                player.AdvanceTo((long)(played * pace * NanosecondsPerSecond));
            if (player.IsOver && !isOver)
                over();
            isOver |= player.IsOver;
        }
    }
}
