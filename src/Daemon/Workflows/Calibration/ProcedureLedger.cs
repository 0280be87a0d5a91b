using ScaleLink.Daemon.Journal;
using ScaleLink.Weighing.Calibration.Flow;

namespace ScaleLink.Daemon.Workflows.Calibration;

/// <summary>
/// Calibration procedures in the ledger, an entry for every step. The entry that begins a calibration procedure gives it its number; the others name it. A calibration procedure
/// is made anew from its entries.
/// </summary>
internal sealed class ProcedureLedger(LedgerDatabase ledger)
{
    private const string Name = "proof";

    internal static readonly FoldedKind<ProcedureBook, ProcedureEvent> Steps = new(new(Name, ProcedureFlowJson.Options), (book, step) => book.After(step));
    internal static readonly FoldedKind<ProcedureBook, CalibrationLedger.Written> Adoptions = CalibrationLedger.Folded<ProcedureBook>((book, adopted) => book.After(adopted));

    /// <summary>Every calibration procedure, oldest first; of one pad or of all.</summary>
    public IReadOnlyList<ProcedureRecord> All(string? serialNumber = null) =>
        [.. Journal.TakeUp.Of(ledger, ProcedureBook.Empty, serialNumber, [Steps, Adoptions]).All.Values];

    /// <summary>One calibration procedure by its number.</summary>
    public ProcedureRecord? Find(long id) => ledger.Entry(id) is { Kind: Name } entry ? All(entry.Subject).FirstOrDefault(p => p.Id == id) : null;

    internal Workflow<ProcedureBook> TakeUp() => new(ledger, ProcedureBook.Empty, null, Steps, Adoptions);
}
