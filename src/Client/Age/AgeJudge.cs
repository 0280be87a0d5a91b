using ScaleLink.Api.V1;

namespace ScaleLink.Client.Age;

/// <summary>Decides whether a stamped message is live, held or absent.</summary>
internal sealed class AgeJudge<T>(DaemonClock clock, Func<T, Stamp?> stampOf) where T : class
{
    public Judged<T> Judge(T? message, bool isNew, Diagnostic? trouble)
    {
        if (message is null || clock.Judge(stampOf(message)) is not { Freshness: not Freshness.Absent } judged)
            return Absent(trouble);
        return new Judged<T>
        {
            Freshness = judged.Freshness,
            Message = message,
            Age = judged.Age,
            Trouble = trouble,
            IsNew = isNew,
        };
    }

    private static Judged<T> Absent(Diagnostic? trouble) => new() { Freshness = Freshness.Absent, Trouble = trouble };
}
