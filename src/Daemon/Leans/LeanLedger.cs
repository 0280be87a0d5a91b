using System.Collections.Immutable;
using System.Text.Json;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Pipeline;

namespace ScaleLink.Daemon.Leans;

/// <summary>
/// Zeros of inclinometers and the tests that find them, by the pad's serial number. Each entry holds all that is known after its step, so
/// that a reading and the zero that comes of it are on the disk together or not at all.
/// </summary>
public sealed class LeanLedger(LedgerDatabase ledger) : ILeanStore
{
    private static readonly EntryKind<LeanRecord> Kind = new("lean-zero", new JsonSerializerOptions(JsonSerializerDefaults.Web) { IgnoreReadOnlyProperties = true });

    internal static readonly FoldedKind<ImmutableDictionary<string, LeanRecord>, LeanRecord> Steps = new(Kind, (records, step) => records.SetItem(step.Subject, step.Body));

    /// <inheritdoc/>
    public SavedLeanZero? InForce(string serialNumber) => Of(serialNumber).Zero;

    /// <summary>What is known of that pad; an empty record when nothing is.</summary>
    public LeanRecord Of(string serialNumber) => Kind.Newest(ledger, serialNumber)?.Body ?? new LeanRecord();

    internal Workflow<ImmutableDictionary<string, LeanRecord>> TakeUp() => new(ledger, ImmutableDictionary<string, LeanRecord>.Empty, null, Steps);
}
