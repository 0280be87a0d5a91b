using ScaleLink.Daemon.Pipeline;
using ScaleLink.Daemon.Work;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Publishing.Grpc;

/// <summary>The session in the bay at this moment.</summary>
internal sealed class SessionNow(WorkDesk desk, LiveBay bay, ApiMapping mapping, BayClock clock, ReadingTaker taker)
{
    /// <summary>With what the settled car shows at this moment; null when no session is open.</summary>
    public SessionView? Look() => desk.Current is { } view ? view with { Unnamed = UnnamedChange.Of(view, taker.Peek()) } : null;

    public Wire.GetSessionResponse Take() => new()
    {
        Stamp = mapping.Stamp(bay.Newest?.Seq ?? 0, clock.NowNs, 2.5 * ChangeNudges.AtLeastEvery.TotalMilliseconds),
        Session = Look() is { } view ? WorkMapping.Session(view) : null,
    };
}
