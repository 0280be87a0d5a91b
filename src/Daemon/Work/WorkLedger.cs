using System.Text.Json;
using System.Text.Json.Serialization;
using ScaleLink.Daemon.Journal;
using ScaleLink.Weighing.Cars;

namespace ScaleLink.Daemon.Work;

/// <summary>Sessions in the ledger: every step one entry, under the session's name.</summary>
public sealed class WorkLedger(LedgerDatabase ledger, TimeProvider time)
{
    private static readonly EntryKind<WorkStep> Kind = new("work", new JsonSerializerOptions(JsonSerializerDefaults.Web)
    {
        // What can be worked out again is not written down.
        IgnoreReadOnlyProperties = true,
        NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
        Converters = { new JsonStringEnumConverter(), new StoredDiagnostic() },
    });

    /// <summary>The session that has not ended; null when there is none.</summary>
    public WorkSession? Open() => All().LastOrDefault(s => s.End is null);

    /// <summary>All sessions, oldest first. A step that cannot be read is left out by name, a session whose beginning cannot be read as a whole.</summary>
    public IReadOnlyList<WorkSession> All() => [.. Kind.All(ledger).GroupBy(e => e.Subject).Select(g => Fold([.. g])).OfType<WorkSession>().OrderBy(s => s.StartedAt)];

    /// <summary>One session.</summary>
    public WorkSession? Find(string id) => Fold([.. Kind.All(ledger, id)]);

    /// <summary>Writes the first step.</summary>
    public WorkSession Begin(SessionStarted start, string who)
    {
        var at = time.GetUtcNow();
        var id = $"{at:yyyyMMdd-HHmmss}";
        while (ledger.Newest(Kind.Name, id) is not null)
            id += "a";
        // Made once before it is written: what cannot be read must not be begun.
        var session = WorkSession.Begin(start, id, at, who, 0);
        var entry = Kind.Append(ledger, at, id, who, start);
        return session with { Entry = entry.Id, StartedAt = entry.At };
    }

    /// <summary>Writes a step and gives the session after it.</summary>
    public WorkSession Take(WorkSession session, WorkStep step, string who)
    {
        ArgumentNullException.ThrowIfNull(session);
        var at = time.GetUtcNow();
        // A step that cannot be applied must not be acknowledged.
        SessionFold.Apply(session, step, at, who, session.Entry);
        var entry = Kind.Append(ledger, at, session.Id, who, step);
        return SessionFold.Apply(session, step, entry.At, who, entry.Id);
    }

    private WorkSession? Fold(IReadOnlyList<JournalEntry<WorkStep>> entries)
    {
        WorkSession? session = null;
        foreach (var entry in entries)
            session = Apply(session, entry) ?? session;
        return session;
    }

    // What was acknowledged is not judged again; but a step whose forerunner is lost may have nothing left to stand on.
    private WorkSession? Apply(WorkSession? session, JournalEntry<WorkStep> entry)
    {
        try
        {
            return session is not null ? SessionFold.Apply(session, entry.Body, entry.At, entry.Who, entry.Id)
                : entry.Body is SessionStarted start ? WorkSession.Begin(start, entry.Subject, entry.At, entry.Who, entry.Id)
                : throw new InvalidOperationException("the beginning of its session is missing");
        }
        catch (Exception e) when (e is RefusedException or DiagnosticException or ArgumentException or InvalidOperationException)
        {
            ledger.LeftOut.Add(entry.Id, Kind.Name, entry.Subject, e is InvalidOperationException ? e.Message : $"it does not follow from the steps before it ({e.Message})");
            return null;
        }
    }
}
