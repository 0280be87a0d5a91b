using System.Text.Json;
using ScaleLink.Daemon.Ledger;
using ScaleLink.Weighing.Cars;

namespace ScaleLink.Daemon.Work;

/// <summary>Sessions in the ledger: every step one entry, under the session's name.</summary>
public sealed class WorkLedger(LedgerDatabase ledger, TimeProvider time, ILogger<WorkLedger> log)
{
    private const string Kind = "work";

    /// <summary>The session that has not ended; null when there is none.</summary>
    public WorkSession? Open() => All().LastOrDefault(s => s.End is null);

    /// <summary>All sessions, oldest first. One that cannot be read any more is left out.</summary>
    public IReadOnlyList<WorkSession> All() => [.. ledger.Entries(Kind).GroupBy(e => e.Subject).Select(g => Fold([.. g])).OfType<WorkSession>().OrderBy(s => s.StartedAt)];

    /// <summary>One session.</summary>
    public WorkSession? Find(string id) => Fold(ledger.Entries(Kind, id));

    /// <summary>Writes the first step.</summary>
    public WorkSession Begin(SessionStarted start, string who)
    {
        var at = time.GetUtcNow();
        var id = $"{at:yyyyMMdd-HHmmss}";
        while (ledger.Newest(Kind, id) is not null)
            id += "a";
        // Made once before it is written: what cannot be read must not be begun.
        var session = WorkSession.Begin(start, id, at, who, 0);
        var entry = ledger.Append(at, Kind, id, who, WorkJson.Write(start));
        return session with { Entry = entry.Id, StartedAt = entry.At };
    }

    /// <summary>Writes a step and gives the session after it.</summary>
    public WorkSession Take(WorkSession session, WorkStep step, string who)
    {
        ArgumentNullException.ThrowIfNull(session);
        var at = time.GetUtcNow();
        // A step that cannot be applied must not be acknowledged.
        SessionFold.Apply(session, step, at, who, session.Entry);
        var entry = ledger.Append(at, Kind, session.Id, who, WorkJson.Write(step));
        return SessionFold.Apply(session, step, entry.At, who, entry.Id);
    }

    private WorkSession? Fold(IReadOnlyList<LedgerEntry> entries)
    {
        try
        {
            if (entries.Count == 0 || WorkJson.Read(entries[0].Body) is not SessionStarted start)
                return null;
            var first = entries[0];
            var session = WorkSession.Begin(start, first.Subject, first.At, first.Who, first.Id);
            return entries.Skip(1).Aggregate(session, (s, e) => SessionFold.Apply(s, WorkJson.Read(e.Body), e.At, e.Who, e.Id));
        }
        catch (Exception e) when (e is JsonException or WorkRefusedException or FindingException)
        {
            log.LogWarning("Session {Session} cannot be read by this version: {Reason}", entries[0].Subject, e.Message);
            return null;
        }
    }
}
