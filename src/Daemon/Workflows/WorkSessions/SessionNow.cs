using ScaleLink.Daemon.Workflows.WorkSessions.Standings;

namespace ScaleLink.Daemon.Workflows.WorkSessions;

/// <summary>The session in the bay at this moment.</summary>
internal sealed class SessionNow(SessionDesk desk, ReadingTaker taker)
{
    /// <summary>With what the settled car shows at this moment; null when no session is open.</summary>
    public SessionView? Look() => desk.Current is { } view ? view with { Unnamed = UnnamedChange.Of(view, taker.Peek()) } : null;
}
