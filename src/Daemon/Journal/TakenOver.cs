namespace ScaleLink.Daemon.Journal;

/// <summary>Somebody has decided that entries behind a damage count.</summary>
/// <param name="Count">How many.</param>
/// <param name="First">Number of the first.</param>
/// <param name="Last">Number of the last; some between them may be lost.</param>
/// <param name="DamagedFile">Where they come from.</param>
internal sealed record TakenOver(long Count, long First, long Last, string DamagedFile)
{
    /// <summary>As it stands in the ledger.</summary>
    public static EntryKind<TakenOver> Kind { get; } = new("taken-over");

    /// <summary>What a reader of entries has to know; empty: all are chained.</summary>
    /// <param name="ledger">The ledger.</param>
    /// <param name="first">Number of the first entry.</param>
    /// <param name="last">Number of the last one.</param>
    public static string Remark(LedgerDatabase ledger, long first, long last)
    {
        ArgumentNullException.ThrowIfNull(ledger);
        var within = ledger.Unchained.Where(id => id >= first && id <= last).ToList();
        return within.Count == 0 ? "" : $"Record: {(within.Count == 1 ? $"entry {within[0]} was" : $"{within.Count} entries from {within[0]} to {within[^1]} were")} taken over from a damaged ledger, and nothing ties {(within.Count == 1 ? "it" : "them")} to what came before.";
    }
}
