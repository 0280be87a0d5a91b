using System.Runtime.CompilerServices;
using ScaleLink.Measure;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.WorkSessions.Learning;
using ScaleLink.Weighing.WorkSessions.Planning;

namespace ScaleLink.Daemon.Workflows.WorkSessions;

/// <summary>What to turn next in a session: a plan, or why there is none.</summary>
/// <param name="Plan">Null when it cannot be planned.</param>
/// <param name="Findings">The plan's own, and what stood in its way.</param>
internal sealed record SessionPlan(PerchPlan? Plan, IReadOnlyList<Diagnostic> Findings)
{
    // A search of some milliseconds that every watcher asks for: once for each state of the session is enough.
    private static readonly ConditionalWeakTable<WorkSession, SessionPlan> Made = [];

    /// <summary>The plan from where the session stands; null before the baseline.</summary>
    public static SessionPlan? Of(WorkSession session)
    {
        ArgumentNullException.ThrowIfNull(session);
        return session.Known is null ? null : Made.GetValue(session, s => Of(s, refine: false)!);
    }

    /// <summary>The same, even when everything is within its tolerance.</summary>
    public static SessionPlan? Of(WorkSession session, bool refine)
    {
        ArgumentNullException.ThrowIfNull(session);
        return session.Known is { } known ? From(known, session.HeightsNowMm, session.Car.Targets, refine) : null;
    }

    /// <summary>What is left to turn once the turns on record without a reading are made, as far as can be foreseen; null before the baseline.</summary>
    public static SessionPlan? Rest(WorkSession session)
    {
        ArgumentNullException.ThrowIfNull(session);
        if (session.Known is not { } known)
            return null;
        // Nobody has read the pads yet: only the turns count.
        var then = known.Record(new StepRecord(session.OpenTurns, known.Last, Settled: false)).Next;
        return From(then, session.HeightsNowMm is { } now ? now + known.Effects.HeightsPerTurn * session.OpenTurns : null, session.Car.Targets, refine: false);
    }

    private static SessionPlan From(StepLearner known, Corners? heights, CarTargets targets, bool refine)
    {
        List<Diagnostic> findings = [];
        if (heights is null && targets is { RideHeightsMm: not null } or { RakeMm: not null } or { LeftRightDifferenceMm: not null })
        {
            targets = targets with { RideHeightsMm = null, RakeMm = null, LeftRightDifferenceMm = null };
            findings.Add(new(SessionCodes.HeightsWanted, "The car has targets for ride heights, but none were measured.", "Measure all four and enter them; until then the heights are kept as they are."));
        }

        try
        {
            var plan = PerchPlanner.Plan(new(known, heights, refine) { Targets = targets });
            return new(plan, [.. findings, .. plan.Findings]);
        }
        catch (DiagnosticException e)
        {
            return new(null, [.. findings, .. e.Diagnostics]);
        }
    }
}
