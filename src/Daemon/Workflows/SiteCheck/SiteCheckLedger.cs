using System.Text.Json;
using System.Text.Json.Serialization;
using ScaleLink.Daemon.Journal;

namespace ScaleLink.Daemon.Workflows.SiteCheck;

/// <summary>Watches over empty pads in the ledger: one entry when one begins, one when it ends.</summary>
internal sealed class SiteCheckLedger(LedgerDatabase ledger, string bay)
{
    private static readonly EntryKind<SiteCheckRecord> Kind = new(
        "paddock-watch", new JsonSerializerOptions(JsonSerializerDefaults.Web) { IgnoreReadOnlyProperties = true, Converters = { new JsonStringEnumConverter(), new StoredDiagnostic() } });

    internal static readonly FoldedKind<SiteCheckState, SiteCheckRecord> Steps =
        new(Kind, (state, step) => step.Body.Ending == SiteCheckEnding.None ? state with { Now = new(step.Body, 0, null) } : new(null, step.Body), isWhole: true);

    /// <summary>What they are about.</summary>
    internal string Bay => bay;

    /// <summary>The newest; one without an ending was cut short by whatever ended the daemon.</summary>
    public SiteCheckRecord? Newest() => Kind.Newest(ledger, bay)?.Body;

    internal Workflow<SiteCheckState> TakeUp() => new(ledger, new(null, null), bay, Steps);
}
