using ScaleLink.Daemon.Journal;
using ScaleLink.Weighing.Calibration.Flow;

namespace ScaleLink.Daemon.Workflows.PadInterchange;

/// <summary>Pad interchanges in the ledger, an entry for every step; the first one gives the pad interchange its number.</summary>
internal sealed class InterchangeLedger(LedgerDatabase ledger, string bay)
{
    internal static readonly FoldedKind<InterchangeBook, InterchangeEvent> Steps = new(new("rotation", ProcedureFlowJson.Options), (book, step) => book.After(step));

    /// <summary>What they are about.</summary>
    internal string Bay => bay;

    /// <summary>Every pad interchange of the bay, oldest first.</summary>
    public IReadOnlyList<InterchangeRecord> All() => [.. Journal.TakeUp.Of(ledger, InterchangeBook.Empty, bay, [Steps]).All.Values];

    internal Workflow<InterchangeBook> TakeUp() => new(ledger, InterchangeBook.Empty, bay, Steps);
}
