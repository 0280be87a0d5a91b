using System.Text.Json;
using System.Text.Json.Serialization;
using ScaleLink.Daemon.Journal;

namespace ScaleLink.Daemon.Paddock;

/// <summary>Watches over empty pads in the ledger: one entry when one begins, one when it ends.</summary>
public sealed class PaddockLedger(LedgerDatabase ledger, string bay)
{
    private static readonly EntryKind<PaddockRecord> Kind = new(
        "paddock-watch", new JsonSerializerOptions(JsonSerializerDefaults.Web) { IgnoreReadOnlyProperties = true, Converters = { new JsonStringEnumConverter(), new StoredDiagnostic() } });

    /// <summary>The newest; one without an ending was cut short by whatever ended the daemon.</summary>
    public PaddockRecord? Newest() => Kind.Newest(ledger, bay)?.Body;

    /// <summary>Writes a watch as it stands.</summary>
    public void Append(PaddockRecord record, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(record);
        Kind.Append(ledger, at, bay, record.Who, record);
    }
}
