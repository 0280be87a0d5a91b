using System.Text.Json;
using Microsoft.Data.Sqlite;
using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Journal;

/// <summary>A ledger and what was lost of it; the latter is absent when nothing was.</summary>
internal sealed record OpenedLedger(LedgerDatabase Ledger, LedgerDamage? Damage);

/// <summary>
/// Opens a ledger so that nothing is lost in silence: what is whole is kept, what is not is said, and the damaged files stay beside it.
/// </summary>
internal static class LedgerOpening
{
    /// <summary>Opens the ledger, or makes it.</summary>
    /// <param name="path">Of the ledger.</param>
    /// <param name="now">For the name of a damaged file, and the entry that tells of it; UTC.</param>
    public static OpenedLedger Open(string path, DateTimeOffset now)
    {
        var (found, rescued) = (path + ".opening", path + ".rescued");
        // A rescue that was cut off at its last step.
        if (!File.Exists(path) && File.Exists(rescued))
            LedgerFiles.Replace(rescued, path);

        var known = new LedgerHeadFile(path).Read();
        // Opening takes the write-ahead log into the ledger, or throws it away: the copy shows what was found.
        LedgerFiles.Delete(found);
        LedgerFiles.Copy(path, found);
        if (OpenWhole(path, known) is { } whole)
        {
            LedgerFiles.Delete(found);
            LedgerFiles.Delete(rescued);
            return new OpenedLedger(whole, null);
        }

        var kept = $"{path}.damaged-{now.UtcDateTime:yyyyMMdd'T'HHmmss}";
        var damage = Rescue(found, rescued, known, Path.GetFileName(kept), now);
        LedgerFiles.Replace(found, kept);
        LedgerFiles.Replace(rescued, path);
        // What was once taken over is to be read there too.
        var ledger = new LedgerDatabase(path);
        ledger.CheckChain(null);
        return new OpenedLedger(ledger, damage);
    }

    /// <summary>Does something with a ledger at the start of a program; what does not come off is said as a refusal to start.</summary>
    /// <exception cref="StartException">SL-362: the disk, the folder or its rights are in the way.</exception>
    public static T OrSay<T>(string path, Func<T> open)
    {
        try
        {
            return open();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or SqliteException)
        {
            throw new StartException(LedgerCodes.LedgerUnopenable, $"The ledger {path} cannot be opened: {e.Message}.", "See that its folder is there, can be written by the daemon, and has room on its disk.", e);
        }
    }

    private static LedgerDamage Rescue(string found, string rescued, LedgerHead? known, string kept, DateTimeOffset now)
    {
        LedgerFiles.Delete(rescued);
        using var ledger = new LedgerDatabase(rescued);
        var remains = LedgerFiles.OnCopy(found, from => Remains.Take(from, known, ledger)) ?? Remains.None;
        // Numbers may have been left free before: what counts is how many entries there were.
        var damage = new LedgerDamage(remains.Kept, known?.Id - (remains.LastKept - remains.Kept), kept, remains.Behind);
        // What lies behind the damage keeps its numbers, should it be taken over.
        ledger.Append(now, LedgerDamage.Kind.Name, "ledger", "scalelinkd", JsonSerializer.Serialize(damage), number: remains.LastBehind + 1);
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
}
