using ScaleLink.Daemon.Journal;
using ScaleLink.Weighing.Calibration;

namespace ScaleLink.Daemon.Proving;

/// <summary>Rotations in the ledger, an entry for every step; the first one gives the rotation its number.</summary>
public sealed class RotationLedger(LedgerDatabase ledger, string bay)
{
    internal static readonly FoldedKind<RotationBook, RotationEvent> Steps = new(new("rotation", ProofFlowJson.Options), (book, step) => book.After(step));

    /// <summary>What they are about.</summary>
    internal string Bay => bay;

    /// <summary>Every rotation of the bay, oldest first.</summary>
    public IReadOnlyList<RotationRecord> All() => [.. Journal.TakeUp.Of(ledger, RotationBook.Empty, bay, [Steps]).All.Values];

    internal Workflow<RotationBook> TakeUp() => new(ledger, RotationBook.Empty, bay, Steps);
}
