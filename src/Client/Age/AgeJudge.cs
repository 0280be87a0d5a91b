using ScaleLink.Api.V1;

namespace ScaleLink.Client.Age;

/// <summary>Decides whether a stamped message is live, held or absent.</summary>
internal sealed class AgeJudge<T>(DaemonClock clock, Func<T, Stamp?> stampOf) where T : class
{
    /// <summary>Older than this, a load says nothing about the car any more. Common practice, no published source.</summary>
    public static readonly TimeSpan HeldAtMost = TimeSpan.FromSeconds(60);

    public Judged<T> Judge(T? message, bool isNew, Diagnostic? trouble)
    {
        if (message is null || stampOf(message) is not { } stamp)
            return Absent(trouble);
        var age = clock.AgeOf(stamp);
        // Another run: its clock and its sequence say nothing about this value.
        if (age is null && clock.RunId is { } run && run != stamp.RunId || age > HeldAtMost)
            return Absent(trouble);
        var isLive = age?.TotalMilliseconds <= stamp.MaxAgeMs;
        return new Judged<T>
        {
            Freshness = isLive ? Freshness.Live : Freshness.Held,
            Message = message,
            Age = age,
            Trouble = trouble,
            IsNew = isNew,
        };
    }

    private static Judged<T> Absent(Diagnostic? trouble) => new() { Freshness = Freshness.Absent, Trouble = trouble };
}
