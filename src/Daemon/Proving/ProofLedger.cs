using ScaleLink.Daemon.Journal;
using ScaleLink.Weighing.Calibration;

namespace ScaleLink.Daemon.Proving;

/// <summary>
/// Proofs in the ledger, an entry for every step. The entry that begins a proof gives it its number; the others name it. A proof
/// is made anew from its entries.
/// </summary>
public sealed class ProofLedger(LedgerDatabase ledger)
{
    private const string Name = "proof";

    internal static readonly FoldedKind<ProofBook, ProofEvent> Steps = new(new(Name, ProofFlowJson.Options), (book, step) => book.After(step));
    internal static readonly FoldedKind<ProofBook, CalibrationLedger.Written> Adoptions = CalibrationLedger.Folded<ProofBook>((book, adopted) => book.After(adopted));

    /// <summary>Every proof, oldest first; of one pad or of all.</summary>
    public IReadOnlyList<ProofRecord> All(string? serialNumber = null) =>
        [.. Journal.TakeUp.Of(ledger, ProofBook.Empty, serialNumber, [Steps, Adoptions]).All.Values];

    /// <summary>One proof by its number.</summary>
    public ProofRecord? Find(long id) => ledger.Entry(id) is { Kind: Name } entry ? All(entry.Subject).FirstOrDefault(p => p.Id == id) : null;

    internal Workflow<ProofBook> TakeUp() => new(ledger, ProofBook.Empty, null, Steps, Adoptions);
}
