using ScaleLink.Api.V1;

namespace ScaleLink.Board.Age;

/// <summary>Decides whether a message is live, held or absent.</summary>
internal static class AgeJudge
{
    public static Judged<T> Judge<T>(T? message, Stamp? stamp, DaemonClock clock) where T : class =>
        message is not null && clock.Judge(stamp) is { Freshness: not Freshness.Absent } judged ? new(judged.Freshness, message, judged.Age) : new Judged<T>(Freshness.Absent);
}
