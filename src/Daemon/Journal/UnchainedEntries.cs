using Microsoft.Data.Sqlite;

namespace ScaleLink.Daemon.Journal;

/// <summary>
/// Entries that stood behind a damage and were taken over: each follows from the hash that stood in the entry before it, but nothing ties them to the
/// beginning of the chain. They have a table of their own, and the numbers that they always had.
/// </summary>
internal static class UnchainedEntries
{
    /// <summary>Of the table.</summary>
    public const string Schema = """
        CREATE TABLE IF NOT EXISTS unchained(
            id INTEGER PRIMARY KEY,
            at TEXT NOT NULL, kind TEXT NOT NULL, subject TEXT NOT NULL, who TEXT NOT NULL,
            software TEXT NOT NULL, body TEXT NOT NULL, hash TEXT NOT NULL, after TEXT NOT NULL);
        CREATE TRIGGER IF NOT EXISTS unchained_never_change BEFORE UPDATE ON unchained BEGIN SELECT RAISE(ABORT, 'the ledger is append-only'); END;
        CREATE TRIGGER IF NOT EXISTS unchained_never_go BEFORE DELETE ON unchained BEGIN SELECT RAISE(ABORT, 'the ledger is append-only'); END;
        """;

    /// <summary>All of them, by number.</summary>
    public static List<UnchainedEntry> Read(SqliteConnection connection)
    {
        using var query = connection.CreateCommand();
        query.CommandText = "SELECT id, at, kind, subject, who, software, body, hash, after FROM unchained ORDER BY id";
        using var reader = query.ExecuteReader();
        List<UnchainedEntry> entries = [];
        while (reader.Read())
            entries.Add(new(new(reader.GetInt64(0), reader.GetString(1), reader.GetString(2), reader.GetString(3), reader.GetString(4), reader.GetString(5), reader.GetString(6), reader.GetString(7)), reader.GetString(8)));
        return entries;
    }

    /// <summary>Adds some, all or none.</summary>
    /// <exception cref="SqliteException">One of that number is there already, or they cannot be written.</exception>
    public static void Add(SqliteConnection connection, SqliteTransaction transaction, IEnumerable<UnchainedEntry> entries)
    {
        foreach (var entry in entries)
        {
            using var insert = connection.CreateCommand();
            insert.Transaction = transaction;
            insert.CommandText = "INSERT INTO unchained(id, at, kind, subject, who, software, body, hash, after) VALUES($id, $at, $kind, $subject, $who, $software, $body, $hash, $after)";
            insert.Parameters.AddWithValue("$id", entry.Stored.Id);
            insert.Parameters.AddWithValue("$after", entry.After);
            foreach (var (name, value) in entry.Stored.Columns)
                insert.Parameters.AddWithValue(name, value);
            insert.ExecuteNonQuery();
        }
    }
}

/// <summary>An entry and the hash that stood in the one before it.</summary>
internal sealed record UnchainedEntry(StoredEntry Stored, string After)
{
    /// <summary>Whether it is as it was written, provided that so is what stood before it.</summary>
    public bool Holds => Stored.Hash == Stored.HashAfter(After);
}
