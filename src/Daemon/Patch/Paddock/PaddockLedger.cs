using System.Text.Json;
using System.Text.Json.Serialization;
using ScaleLink.Daemon.Ledger;

namespace ScaleLink.Daemon.Patch.Paddock;

/// <summary>Watches over empty pads in the ledger: one entry when one begins, one when it ends.</summary>
public sealed class PaddockLedger(LedgerDatabase ledger, string bay)
{
    private const string Kind = "paddock-watch";
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web) { IgnoreReadOnlyProperties = true, Converters = { new JsonStringEnumConverter() } };

    /// <summary>The newest; one without an ending was cut short by whatever ended the daemon.</summary>
    public PaddockRecord? Newest() => ledger.Newest(Kind, bay) is { } entry ? JsonSerializer.Deserialize<PaddockRecord>(entry.Body, Json) : null;

    /// <summary>Writes a watch as it stands.</summary>
    public void Append(PaddockRecord record, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(record);
        ledger.Append(at, Kind, bay, record.Who, JsonSerializer.Serialize(record, Json));
    }
}
