using Microsoft.Data.Sqlite;

namespace ScaleLink.Daemon.Journal;

/// <summary>Looks for entries of a damaged ledger that hold by themselves although the chain before them is broken.</summary>
internal static class BehindDamage
{
    // A head that is wrong itself must not make this go on for ever; more than that are not lost with a few pages.
    private const int MostMissing = 100_000;

    /// <summary>Those behind the whole beginning, by number: each follows from the hash that stands in the one before it, which itself need not hold.</summary>
    /// <param name="damaged">The damaged ledger, or a copy of it.</param>
    /// <param name="kept">Number of the last entry of the whole beginning.</param>
    /// <param name="known">The newest entry that anybody knows of.</param>
    public static IEnumerable<UnchainedEntry> Find(LedgerDatabase damaged, long kept, long? known) =>
        OnceTakenOver(damaged).Where(e => e.Stored.Id > kept).Concat(InChain(damaged, kept, known)).OrderBy(e => e.Stored.Id);

    /// <summary>Those that an earlier damage had left, and that hold.</summary>
    public static IReadOnlyList<UnchainedEntry> OnceTakenOver(LedgerDatabase damaged)
    {
        try
        {
            return [.. damaged.TakenOver().Where(e => e.Holds)];
        }
        catch (Exception e) when (e is SqliteException or InvalidCastException or InvalidOperationException)
        {
            return [];
        }
    }

    private static IEnumerable<UnchainedEntry> InChain(LedgerDatabase damaged, long kept, long? known)
    {
        var (before, missing) = ((string?)null, 0);
        var last = Math.Max(known ?? 0, damaged.HighestId() ?? 0);
        // One by one by number: a page that cannot be read costs the entries on it, and no others.
        for (var id = kept + 1; id <= last && missing < MostMissing; id++)
        {
            if (damaged.TryRead("WHERE id = $id", ("$id", id)) is not { } entry)
            {
                (before, missing) = (null, missing + 1);
                continue;
            }

            if (before is not null && new UnchainedEntry(entry, before) is { Holds: true } holding && entry.Read() is not null)
                yield return holding;
            (before, missing) = (entry.Hash, 0);
        }
    }
}
