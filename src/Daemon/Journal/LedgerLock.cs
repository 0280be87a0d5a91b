using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Journal;

/// <summary>Held as long as a daemon works on a ledger: a second one on the same ledger is turned away and told who the first is.</summary>
internal static class LedgerLock
{
    /// <summary>Takes the lock, which lies beside the ledger.</summary>
    /// <param name="ledger">Path of the ledger.</param>
    /// <param name="me">For whoever comes second.</param>
    /// <exception cref="StartException">SL-364: another daemon holds it.</exception>
    /// <exception cref="IOException">The folder is missing, full or not writable.</exception>
    public static HolderLock Take(string ledger, LockHolder me)
    {
        try
        {
            return HolderLock.Take(ledger, me);
        }
        catch (HeldException held)
        {
            throw new StartException(LedgerCodes.LedgerHeld, $"Another daemon works on the ledger {ledger}: {held.By}.",
                "End that one first, or give this bay a ledger of its own (ledger.path in the bay file).", held);
        }
    }
}
