namespace ScaleLink.Daemon.Journal;

/// <summary>What there is to be had from a damaged ledger.</summary>
/// <param name="Kept">Entries of the whole beginning.</param>
/// <param name="LastKept">Number of the last of them.</param>
/// <param name="Behind">Entries behind the damage that hold by themselves.</param>
/// <param name="LastBehind">Number of the last of them; absent when there are none.</param>
internal sealed record Remains(long Kept, long LastKept, long Behind, long? LastBehind)
{
    /// <summary>Nothing.</summary>
    public static Remains None { get; } = new(0, 0, 0, null);

    /// <summary>Takes the whole beginning over into another ledger, with what was taken over before, and looks what lies behind.</summary>
    public static Remains Take(LedgerDatabase damaged, LedgerHead? known, LedgerDatabase into)
    {
        var (kept, last) = (0L, 0L);
        foreach (var entry in damaged.WholeChain())
        {
            into.TakeOver(entry);
            (kept, last) = (kept + 1, entry.Id);
        }

        into.TakeOver([.. BehindDamage.OnceTakenOver(damaged).Where(e => e.Stored.Id < last)]);
        var (behind, lastBehind) = (0L, (long?)null);
        foreach (var entry in BehindDamage.Find(damaged, last, known?.Id))
            (behind, lastBehind) = (behind + 1, entry.Stored.Id);
        return new(kept, last, behind, lastBehind);
    }
}
