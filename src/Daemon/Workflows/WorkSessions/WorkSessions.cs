using System.Collections.Immutable;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Workflows.WorkSessions.Steps;

namespace ScaleLink.Daemon.Workflows.WorkSessions;

/// <summary>Sessions, in the order in which they were begun.</summary>
internal sealed record WorkSessions(ImmutableList<WorkSession> All)
{
    public static readonly WorkSessions None = new([]);

    /// <summary>The one that has not ended; null when there is none.</summary>
    public WorkSession? Open => All.FindLast(s => s.End is null);

    /// <summary>The one that the last reading on record belongs to; null when none was ever taken.</summary>
    public WorkSession? LastWeighed => All.FindLast(s => s.Weighings.Count > 0);

    /// <summary>The one that the newest step was taken in.</summary>
    public WorkSession? Newest => All.MaxBy(s => s.Entry);

    /// <summary>Those that matter to the bay.</summary>
    public WorkSessions InTheBay => new(All.RemoveAll(s => !ReferenceEquals(s, Open) && !ReferenceEquals(s, LastWeighed)));

    /// <summary>After one more step. A step whose session is not there throws.</summary>
    public WorkSessions After(JournalEntry<SessionStep> step)
    {
        var at = All.FindLastIndex(s => s.Id == step.Subject);
        return at >= 0 ? new(All.SetItem(at, SessionFold.Apply(All[at], step.Body, step.At, step.Who, step.Id)))
            : step.Body is SessionStarted start ? new(All.Add(WorkSession.Begin(start, step.Subject, step.At, step.Who, step.Id)))
            : throw new InvalidOperationException("the beginning of its session is missing");
    }
}
