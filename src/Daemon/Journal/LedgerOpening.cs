using System.Text.Json;
using Microsoft.Data.Sqlite;

namespace ScaleLink.Daemon.Journal;

/// <summary>What was lost of a ledger.</summary>
/// <param name="Kept">Entries that are whole and were taken over.</param>
/// <param name="Known">Entries that had been written, as far as anybody knows; absent when nobody does.</param>
/// <param name="DamagedFile">The damaged ledger, kept as it was found.</param>
internal sealed record LedgerDamage(long Kept, long? Known, string DamagedFile)
{
    /// <summary>What is wrong.</summary>
    public string Message => $"The ledger was damaged: {Kept} entries are whole, {(Known is { } known ? $"{Math.Max(0, known - Kept)} after them are lost" : "what came after them is lost")}.";

    /// <summary>What to do next.</summary>
    public string Remedy => $"The damaged file is kept as {DamagedFile}. Look at the calibrations and zeros in effect before you weigh; restore a backup of the ledger if there is a better one; test the disk.";
}

/// <summary>A ledger and what was lost of it; the latter is absent when nothing was.</summary>
internal sealed record OpenedLedger(LedgerDatabase Ledger, LedgerDamage? Damage);

/// <summary>
/// Opens a ledger so that nothing is lost in silence: what is whole is kept, what is not is said, and the damaged files stay beside it.
/// </summary>
internal static class LedgerOpening
{
    private static readonly string[] Parts = ["", "-wal", "-shm", ".head"];

    /// <summary>Opens the ledger, or makes it.</summary>
    /// <param name="path">Of the ledger.</param>
    /// <param name="now">For the name of a damaged file, and the entry that tells of it; UTC.</param>
    public static OpenedLedger Open(string path, DateTimeOffset now)
    {
        var (found, rescued) = (path + ".opening", path + ".rescued");
        // A rescue that was cut off at its last step.
        if (!File.Exists(path) && File.Exists(rescued))
            Replace(rescued, path);

        var known = new LedgerHeadFile(path).Read();
        // Opening takes the write-ahead log into the ledger, or throws it away: the copy shows what was found.
        Delete(found);
        Copy(path, found);
        if (OpenWhole(path, known) is { } whole)
        {
            Delete(found);
            Delete(rescued);
            return new OpenedLedger(whole, null);
        }

        var kept = $"{path}.damaged-{now.UtcDateTime:yyyyMMdd'T'HHmmss}";
        var damage = Rescue(found, rescued, known, Path.GetFileName(kept), now);
        Replace(found, kept);
        Replace(rescued, path);
        return new OpenedLedger(new LedgerDatabase(path), damage);
    }

    private static LedgerDamage Rescue(string found, string rescued, LedgerHead? known, string kept, DateTimeOffset now)
    {
        Delete(rescued);
        using var ledger = new LedgerDatabase(rescued);
        var damage = new LedgerDamage(TakeOver(found, ledger), known?.Id, kept);
        ledger.Append(now, "ledger-damage", "ledger", "scalelinkd", JsonSerializer.Serialize(new { damage.Kept, damage.Known, damage.DamagedFile }));
        return damage;
    }

    private static LedgerDatabase? OpenWhole(string path, LedgerHead? known)
    {
        LedgerDatabase? ledger = null;
        try
        {
            ledger = new LedgerDatabase(path);
            if (ledger.IsSound() && ledger.CheckChain(known) is null && Reaches(ledger, known))
                return ledger;
        }
        catch (Exception e) when (e is SqliteException or FormatException or InvalidCastException or InvalidOperationException)
        {
            // Damaged: what can be saved of it is looked for in the copy.
        }

        ledger?.Dispose();
        return null;
    }

    private static bool Reaches(LedgerDatabase ledger, LedgerHead? known) => known is null || ledger.HashOf(known.Id) == known.Hash;

    private static long TakeOver(string damaged, LedgerDatabase into)
    {
        // SQLite works on a copy of the copy: the files that were found must stay as they are.
        var work = damaged + ".work";
        Copy(damaged, work);
        var taken = 0L;
        try
        {
            using var from = new LedgerDatabase(work);
            foreach (var entry in from.WholeChain())
            {
                into.TakeOver(entry);
                taken++;
            }
        }
        catch (SqliteException)
        {
            // Not even a ledger any more.
        }
        finally
        {
            Delete(work);
        }

        return taken;
    }

    private static void Copy(string from, string to)
    {
        foreach (var part in Parts.Where(part => File.Exists(from + part)))
            File.Copy(from + part, to + part, overwrite: true);
    }

    private static void Replace(string from, string to)
    {
        Delete(to);
        foreach (var part in Parts.Where(part => File.Exists(from + part)))
            File.Move(from + part, to + part);
    }

    private static void Delete(string path)
    {
        foreach (var part in Parts)
            File.Delete(path + part);
    }
}
