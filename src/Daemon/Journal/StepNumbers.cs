using Microsoft.Data.Sqlite;

namespace ScaleLink.Daemon.Journal;

/// <summary>
/// Which entries were written by which step of a caller. A step has a number that its caller gave it: whoever lost the answer asks by it whether the step
/// is on record, even of a daemon that was started again since.
/// </summary>
internal static class StepNumbers
{
    /// <summary>Of the table. It is no part of the record: nothing hangs on it but an answer to who asks.</summary>
    public const string Schema = "CREATE TABLE IF NOT EXISTS steps(entry INTEGER PRIMARY KEY, step TEXT NOT NULL); CREATE INDEX IF NOT EXISTS steps_by_number ON steps(step);";

    private static readonly AsyncLocal<string?> Flowing = new();

    /// <summary>Number of the step that is being taken here; nothing: of none that has one.</summary>
    public static string? Current => Flowing.Value;

    /// <summary>What is written from here on, by whoever is called from here, belongs to that step.</summary>
    public static void Begin(string number) => Flowing.Value = number;

    /// <summary>Keeps that an entry belongs to the step being taken, together with the entry.</summary>
    public static void Keep(SqliteConnection connection, SqliteTransaction transaction, long entry)
    {
        if (Current is not { } step)
            return;
        using var insert = connection.CreateCommand();
        insert.Transaction = transaction;
        insert.CommandText = "INSERT INTO steps(entry, step) VALUES($entry, $step)";
        insert.Parameters.AddWithValue("$entry", entry);
        insert.Parameters.AddWithValue("$step", step);
        insert.ExecuteNonQuery();
    }

    /// <summary>Numbers of the entries that a step has written, in order.</summary>
    public static List<long> EntriesOf(SqliteConnection connection, string step)
    {
        using var query = connection.CreateCommand();
        query.CommandText = "SELECT entry FROM steps WHERE step = $step ORDER BY entry";
        query.Parameters.AddWithValue("$step", step);
        using var reader = query.ExecuteReader();
        List<long> entries = [];
        while (reader.Read())
            entries.Add(reader.GetInt64(0));
        return entries;
    }
}
