using System.Text.Json;
using System.Text.Json.Serialization;
using ScaleLink.Daemon.Clocks;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Workflows.WorkSessions.Steps;

namespace ScaleLink.Daemon.Workflows.WorkSessions;

/// <summary>Sessions in the ledger: every step one entry, under the session's name.</summary>
internal sealed class SessionLedger(LedgerDatabase ledger)
{
    private static readonly EntryKind<SessionStep> Kind = new("work", new JsonSerializerOptions(JsonSerializerDefaults.Web)
    {
        // What can be worked out again is not written down.
        IgnoreReadOnlyProperties = true,
        NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
        Converters = { new JsonStringEnumConverter(), new StoredDiagnostic() },
    });

    internal static readonly FoldedKind<WorkSessions, SessionStep> Steps = new(Kind, (sessions, step) => sessions.After(step));

    /// <summary>The session that has not ended; null when there is none.</summary>
    public WorkSession? Open() => Read().Open;

    /// <summary>All sessions, oldest first. A step that cannot be read is left out by name, a session whose beginning cannot be read as a whole.</summary>
    public IReadOnlyList<WorkSession> All() => Read().All;

    /// <summary>One session.</summary>
    public WorkSession? Find(string id) => Read(id).All.FirstOrDefault();

    /// <summary>What a reader of the record of a session has to know, of its times and of its entries; empty: nothing.</summary>
    public string Remarks(WorkSession session)
    {
        var first = Kind.All(ledger, session.Id).First().Id;
        return string.Join(' ', ((string[])[ClockRecord.Remark(ledger, first, session.Entry), TakenOver.Remark(ledger, first, session.Entry)]).Where(r => r.Length > 0));
    }

    /// <summary>The name of a session that is begun now.</summary>
    internal string NewId(DateTimeOffset at)
    {
        var id = $"{at:yyyyMMdd-HHmmss}";
        while (ledger.Newest(Kind.Name, id) is not null)
            id += "a";
        return id;
    }

    internal Workflow<WorkSessions> TakeUp() => new(ledger, WorkSessions.None, null, Steps);

    private WorkSessions Read(string? id = null) => Journal.TakeUp.Of(ledger, WorkSessions.None, id, [Steps]);
}
