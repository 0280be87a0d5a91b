using System.Text.Json;
using System.Text.Json.Serialization;
using ScaleLink.Daemon.Journal;

namespace ScaleLink.Daemon.Paddock;

/// <summary>Watches over empty pads in the ledger: one entry when one begins, one when it ends.</summary>
public sealed class PaddockLedger(LedgerDatabase ledger, string bay)
{
    private static readonly EntryKind<PaddockRecord> Kind = new(
        "paddock-watch", new JsonSerializerOptions(JsonSerializerDefaults.Web) { IgnoreReadOnlyProperties = true, Converters = { new JsonStringEnumConverter(), new StoredDiagnostic() } });

    internal static readonly FoldedKind<PaddockState, PaddockRecord> Steps =
        new(Kind, (state, step) => step.Body.Ending == PaddockEnding.None ? state with { Now = new(step.Body, 0, null) } : new(null, step.Body), isWhole: true);

    /// <summary>What they are about.</summary>
    internal string Bay => bay;

    /// <summary>The newest; one without an ending was cut short by whatever ended the daemon.</summary>
    public PaddockRecord? Newest() => Kind.Newest(ledger, bay)?.Body;

    internal Workflow<PaddockState> TakeUp() => new(ledger, new(null, null), bay, Steps);
}
