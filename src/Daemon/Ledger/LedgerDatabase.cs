using System.Security.Cryptography;
using System.Text;
using Microsoft.Data.Sqlite;

namespace ScaleLink.Daemon.Ledger;

/// <summary>
/// The append-only record of the bay: one SQLite file, write-ahead log, synchronous FULL, so that what was acknowledged survives a kill and a power cut.
/// Triggers refuse every change and deletion; each entry carries the hash of the one before it, so that a missing or altered entry shows.
/// </summary>
public sealed class LedgerDatabase : IDisposable
{
    private const string Schema = """
        PRAGMA journal_mode = WAL;
        PRAGMA synchronous = FULL;
        CREATE TABLE IF NOT EXISTS entries(
            id INTEGER PRIMARY KEY,
            at TEXT NOT NULL, kind TEXT NOT NULL, subject TEXT NOT NULL, who TEXT NOT NULL,
            software TEXT NOT NULL, body TEXT NOT NULL, hash TEXT NOT NULL);
        CREATE INDEX IF NOT EXISTS entries_by_subject ON entries(kind, subject, id);
        CREATE TRIGGER IF NOT EXISTS entries_never_change BEFORE UPDATE ON entries BEGIN SELECT RAISE(ABORT, 'the ledger is append-only'); END;
        CREATE TRIGGER IF NOT EXISTS entries_never_go BEFORE DELETE ON entries BEGIN SELECT RAISE(ABORT, 'the ledger is append-only'); END;
        """;

    private static readonly string Software = "scalelink " + (typeof(LedgerDatabase).Assembly.GetName().Version?.ToString(3) ?? "0");

    private readonly Lock _gate = new();
    private readonly SqliteConnection _connection;

    /// <summary>Opens the ledger at <paramref name="path"/>, or makes it.</summary>
    public LedgerDatabase(string path)
    {
        _connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = path, Pooling = false }.ToString());
        _connection.Open();
        using var command = _connection.CreateCommand();
        command.CommandText = Schema;
        command.ExecuteNonQuery();
    }

    /// <summary>Appends an entry; it is on the disk when this returns.</summary>
    /// <param name="at">When it happened, UTC.</param>
    /// <param name="kind">What it is, such as <c>zero</c>.</param>
    /// <param name="subject">What it is about, such as a pad's serial number.</param>
    /// <param name="who">Who did it.</param>
    /// <param name="body">JSON.</param>
    public void Append(DateTimeOffset at, string kind, string subject, string who, string body)
    {
        lock (_gate)
        {
            using var transaction = _connection.BeginTransaction();
            var stamp = at.UtcDateTime.ToString("yyyy-MM-ddTHH:mm:ss.fffZ");
            var hash = Hash(LastHash(transaction), stamp, kind, subject, who, Software, body);
            using var insert = _connection.CreateCommand();
            insert.Transaction = transaction;
            insert.CommandText = "INSERT INTO entries(at, kind, subject, who, software, body, hash) VALUES($at, $kind, $subject, $who, $software, $body, $hash)";
            insert.Parameters.AddWithValue("$at", stamp);
            insert.Parameters.AddWithValue("$kind", kind);
            insert.Parameters.AddWithValue("$subject", subject);
            insert.Parameters.AddWithValue("$who", who);
            insert.Parameters.AddWithValue("$software", Software);
            insert.Parameters.AddWithValue("$body", body);
            insert.Parameters.AddWithValue("$hash", hash);
            insert.ExecuteNonQuery();
            transaction.Commit();
        }
    }

    /// <summary>Body of the newest entry of that kind about that subject.</summary>
    public string? Latest(string kind, string subject)
    {
        lock (_gate)
        {
            using var query = _connection.CreateCommand();
            query.CommandText = "SELECT body FROM entries WHERE kind = $kind AND subject = $subject ORDER BY id DESC LIMIT 1";
            query.Parameters.AddWithValue("$kind", kind);
            query.Parameters.AddWithValue("$subject", subject);
            return query.ExecuteScalar() as string;
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _connection.Dispose();

    private string LastHash(SqliteTransaction transaction)
    {
        using var query = _connection.CreateCommand();
        query.Transaction = transaction;
        query.CommandText = "SELECT hash FROM entries ORDER BY id DESC LIMIT 1";
        return query.ExecuteScalar() as string ?? "";
    }

    private static string Hash(params string[] parts) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\u001f', parts))));
}
