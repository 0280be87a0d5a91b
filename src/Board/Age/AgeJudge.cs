using ScaleLink.Api.V1;

namespace ScaleLink.Board.Age;

/// <summary>Decides whether a message is live, held or absent.</summary>
internal static class AgeJudge
{
    /// <summary>Older than this, a load says nothing about the car any more. Common practice, no published source.</summary>
    public static readonly TimeSpan HeldAtMost = TimeSpan.FromSeconds(60);

    public static Judged<T> Judge<T>(T? message, Stamp? stamp, DaemonClock clock) where T : class
    {
        if (message is null || stamp is null)
            return new Judged<T>(Freshness.Absent);
        var age = clock.AgeOf(stamp);
        var isOfAnotherRun = clock.RunId is { } run && run != stamp.RunId;
        if (isOfAnotherRun || age > HeldAtMost)
            return new Judged<T>(Freshness.Absent);
        var isLive = age?.TotalMilliseconds <= stamp.MaxAgeMs;
        return new Judged<T>(isLive ? Freshness.Live : Freshness.Held, message, age);
    }
}
