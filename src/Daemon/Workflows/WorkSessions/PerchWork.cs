using System.Runtime.CompilerServices;
using ScaleLink.Measure;

namespace ScaleLink.Daemon.Workflows.WorkSessions;

/// <summary>The work at the perches since the newest reading. Turns are up positive.</summary>
/// <param name="Planned">What the plan from that reading asks for.</param>
/// <param name="Done">What is recorded since.</param>
/// <param name="Left">What is still to do.</param>
/// <param name="IsReplanned">What was done departs from the plan, and what is left was planned anew from there.</param>
internal sealed record PerchWork(Corners Planned, Corners Done, Corners Left, bool IsReplanned)
{
    // Every watcher asks, and planning anew is a search: once for each state of the session is enough.
    private static readonly ConditionalWeakTable<WorkSession, PerchWork> Made = [];

    /// <summary>That of a session; null before the baseline.</summary>
    public static PerchWork? Of(WorkSession session)
    {
        ArgumentNullException.ThrowIfNull(session);
        return session.Known is null ? null : Made.GetValue(session, Work);
    }

    private static PerchWork Work(WorkSession session)
    {
        var (planned, done) = (SessionPlan.Of(session)?.Plan?.Turns ?? default, session.OpenTurns);
        if (Corners.All.ToArray().All(c => IsOnTheWay(done[c], planned[c])))
            return new(planned, done, planned - done, false);
        return new(planned, done, SessionPlan.Rest(session)?.Plan?.Turns ?? default, true);
    }

    private static bool IsOnTheWay(double done, double planned) => done == 0 || (Math.Sign(done) == Math.Sign(planned) && Math.Abs(done) <= Math.Abs(planned));
}
