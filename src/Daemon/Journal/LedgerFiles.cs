using Microsoft.Data.Sqlite;

namespace ScaleLink.Daemon.Journal;

/// <summary>The files of a ledger, which go together: the ledger, its write-ahead log, and the head beside it.</summary>
internal static class LedgerFiles
{
    private static readonly string[] Parts = ["", "-wal", "-shm", ".head"];

    /// <summary>Copies what there is of them.</summary>
    public static void Copy(string from, string to)
    {
        foreach (var part in Parts.Where(part => File.Exists(from + part)))
            File.Copy(from + part, to + part, overwrite: true);
    }

    /// <summary>Puts them in the place of others.</summary>
    public static void Replace(string from, string to)
    {
        Delete(to);
        foreach (var part in Parts.Where(part => File.Exists(from + part)))
            File.Move(from + part, to + part);
    }

    /// <summary>Deletes what there is of them.</summary>
    public static void Delete(string path)
    {
        foreach (var part in Parts)
            File.Delete(path + part);
    }

    /// <summary>Works on a copy: SQLite writes to whatever it opens, and what was found damaged must stay as it is.</summary>
    /// <returns>What came of it; nothing where the file is no ledger any more.</returns>
    public static T? OnCopy<T>(string path, Func<LedgerDatabase, T> work)
        where T : class
    {
        var copy = path + ".work";
        Copy(path, copy);
        try
        {
            using var ledger = TryOpen(copy);
            return ledger is null ? null : work(ledger);
        }
        finally
        {
            Delete(copy);
        }
    }

    private static LedgerDatabase? TryOpen(string path)
    {
        try
        {
            return new LedgerDatabase(path);
        }
        catch (SqliteException)
        {
            return null;
        }
    }
}
