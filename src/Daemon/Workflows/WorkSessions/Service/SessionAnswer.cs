using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Contract;
using ScaleLink.Daemon.Runtime;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.WorkSessions.Service;

/// <summary>The session in the bay at this moment, in the words of the public API.</summary>
internal sealed class SessionAnswer(SessionNow session, LiveBay bay, ApiMapping mapping, BayClock clock)
{
    public Wire.GetSessionResponse Now() => new()
    {
        Stamp = mapping.Stamp(bay.Newest?.Seq ?? 0, clock.NowNs, 2.5 * ChangeNudges.AtLeastEvery.TotalMilliseconds),
        Session = session.Look() is { } view ? SessionMapping.Session(view) : null,
    };
}
