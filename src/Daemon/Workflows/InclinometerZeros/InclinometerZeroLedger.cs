using System.Collections.Immutable;
using System.Text.Json;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Journal;

namespace ScaleLink.Daemon.Workflows.InclinometerZeros;

/// <summary>
/// Zeros of inclinometers and the tests that find them, by the pad's serial number. Each entry holds all that is known after its step, so
/// that a reading and the zero that comes of it are on the disk together or not at all.
/// </summary>
internal sealed class InclinometerZeroLedger(LedgerDatabase ledger) : IInclinometerZeroStore
{
    private static readonly EntryKind<InclinometerZeroRecord> Kind = new("lean-zero", new JsonSerializerOptions(JsonSerializerDefaults.Web) { IgnoreReadOnlyProperties = true });

    internal static readonly FoldedKind<ImmutableDictionary<string, InclinometerZeroRecord>, InclinometerZeroRecord> Steps = new(Kind, (records, step) => records.SetItem(step.Subject, step.Body));

    /// <inheritdoc/>
    public SavedInclinometerZero? InEffect(string serialNumber) => Of(serialNumber).Zero;

    /// <summary>What is known of that pad; an empty record when nothing is.</summary>
    public InclinometerZeroRecord Of(string serialNumber) => Kind.Newest(ledger, serialNumber)?.Body ?? new InclinometerZeroRecord();

    internal Workflow<ImmutableDictionary<string, InclinometerZeroRecord>> TakeUp() => new(ledger, ImmutableDictionary<string, InclinometerZeroRecord>.Empty, null, Steps);
}
