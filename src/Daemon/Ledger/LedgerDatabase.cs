using System.Globalization;
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

    private const string TimeFormat = "yyyy-MM-ddTHH:mm:ss.fffZ";

    private static readonly string Software = "scalelink " + (typeof(LedgerDatabase).Assembly.GetName().Version?.ToString(3) ?? "0");

    private readonly Lock _gate = new();
    private readonly SqliteConnection _connection;
    private readonly LedgerHeadFile _head;

    /// <summary>Opens the ledger at <paramref name="path"/>, or makes it.</summary>
    /// <exception cref="SqliteException">The file is damaged, or no ledger; <see cref="LedgerOpening"/> deals with that.</exception>
    public LedgerDatabase(string path)
    {
        _head = new LedgerHeadFile(path);
        _connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = path, Pooling = false }.ToString());
        try
        {
            _connection.Open();
            using var command = _connection.CreateCommand();
            command.CommandText = Schema;
            command.ExecuteNonQuery();
        }
        catch
        {
            _connection.Dispose();
            throw;
        }
    }

    /// <summary>Appends an entry; it is on the disk when this returns.</summary>
    /// <param name="at">When it happened, UTC.</param>
    /// <param name="kind">What it is, such as <c>zero</c>.</param>
    /// <param name="subject">What it is about, such as a pad's serial number.</param>
    /// <param name="who">Who did it.</param>
    /// <param name="body">JSON.</param>
    /// <returns>The entry as it stands in the ledger.</returns>
    public LedgerEntry Append(DateTimeOffset at, string kind, string subject, string who, string body)
    {
        lock (_gate)
        {
            using var transaction = _connection.BeginTransaction();
            var stamp = Stamp(at);
            var hash = Hash(LastHash(transaction), stamp, kind, subject, who, Software, body);
            using var insert = Command(
                "INSERT INTO entries(at, kind, subject, who, software, body, hash) VALUES($at, $kind, $subject, $who, $software, $body, $hash) RETURNING id",
                ("$at", stamp), ("$kind", kind), ("$subject", subject), ("$who", who), ("$software", Software), ("$body", body), ("$hash", hash));
            insert.Transaction = transaction;
            var id = (long)insert.ExecuteScalar()!;
            transaction.Commit();
            _head.Write(new LedgerHead(id, hash));
            return new LedgerEntry(id, Time(stamp), kind, subject, who, Software, body, hash);
        }
    }

    /// <summary>Newest entry of that kind about that subject.</summary>
    public LedgerEntry? Newest(string kind, string subject) =>
        Read("WHERE kind = $kind AND subject = $subject ORDER BY id DESC LIMIT 1", ("$kind", kind), ("$subject", subject)).FirstOrDefault();

    /// <summary>All entries of that kind, oldest first; with a subject, only those about it.</summary>
    public IReadOnlyList<LedgerEntry> Entries(string kind, string? subject = null) =>
        subject is null
            ? Read("WHERE kind = $kind ORDER BY id", ("$kind", kind))
            : Read("WHERE kind = $kind AND subject = $subject ORDER BY id", ("$kind", kind), ("$subject", subject));

    /// <summary>The entry with that number.</summary>
    public LedgerEntry? Entry(long id) => Read("WHERE id = $id", ("$id", id)).FirstOrDefault();

    /// <summary>Whether the file's own structure is sound.</summary>
    public bool IsSound()
    {
        lock (_gate)
        {
            using var check = Command("PRAGMA quick_check(1)");
            return check.ExecuteScalar() as string == "ok";
        }
    }

    /// <summary>The newest entry; nothing in an empty ledger.</summary>
    public LedgerHead? Head => Read("ORDER BY id DESC LIMIT 1").Select(e => new LedgerHead(e.Id, e.Hash)).FirstOrDefault();

    /// <summary>Takes over an entry of a damaged ledger as it stands; its hash must follow from what is here.</summary>
    internal void TakeOver(LedgerEntry entry)
    {
        lock (_gate)
        {
            using var insert = Command(
                "INSERT INTO entries(id, at, kind, subject, who, software, body, hash) VALUES($id, $at, $kind, $subject, $who, $software, $body, $hash)",
                ("$id", entry.Id), ("$at", Stamp(entry.At)), ("$kind", entry.Kind), ("$subject", entry.Subject), ("$who", entry.Who), ("$software", entry.Software), ("$body", entry.Body), ("$hash", entry.Hash));
            insert.ExecuteNonQuery();
        }
    }

    /// <summary>The entries from the first on, as long as each can be read and follows from the one before.</summary>
    internal IEnumerable<LedgerEntry> WholeChain()
    {
        var (last, id) = ("", 0L);
        while (TryRead(id) is { } entry && entry.Hash == HashOf(entry, last))
        {
            yield return entry;
            (last, id) = (entry.Hash, entry.Id);
        }
    }

    private LedgerEntry? TryRead(long after)
    {
        try
        {
            return Read("WHERE id > $after ORDER BY id LIMIT 1", ("$after", after)).FirstOrDefault();
        }
        catch (Exception e) when (e is SqliteException or FormatException or InvalidCastException or InvalidOperationException)
        {
            // A damaged page: the chain ends before it.
            return null;
        }
    }

    private static string HashOf(LedgerEntry entry, string last) => Hash(last, Stamp(entry.At), entry.Kind, entry.Subject, entry.Who, entry.Software, entry.Body);

    private static string Stamp(DateTimeOffset at) => at.UtcDateTime.ToString(TimeFormat, CultureInfo.InvariantCulture);

    /// <summary>Number of the first entry whose hash does not follow from what stands before it; nothing when the chain is whole.</summary>
    public long? FirstBrokenLink()
    {
        var last = "";
        foreach (var entry in Read("ORDER BY id"))
        {
            if (entry.Hash != HashOf(entry, last))
                return entry.Id;
            last = entry.Hash;
        }

        return null;
    }

    /// <inheritdoc/>
    public void Dispose() => _connection.Dispose();

    private List<LedgerEntry> Read(string which, params (string Name, object Value)[] parameters)
    {
        lock (_gate)
        {
            using var query = Command("SELECT id, at, kind, subject, who, software, body, hash FROM entries " + which, parameters);
            using var reader = query.ExecuteReader();
            List<LedgerEntry> entries = [];
            while (reader.Read())
                entries.Add(new LedgerEntry(reader.GetInt64(0), Time(reader.GetString(1)), reader.GetString(2), reader.GetString(3),
                    reader.GetString(4), reader.GetString(5), reader.GetString(6), reader.GetString(7)));
            return entries;
        }
    }

    private SqliteCommand Command(string text, params (string Name, object Value)[] parameters)
    {
        var command = _connection.CreateCommand();
#pragma warning disable CA2100 // Every text is a constant of this class; values go in as parameters.
        command.CommandText = text;
#pragma warning restore CA2100
        foreach (var (name, value) in parameters)
            command.Parameters.AddWithValue(name, value);
        return command;
    }

    private static DateTimeOffset Time(string stamp) =>
        DateTimeOffset.ParseExact(stamp, TimeFormat, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal);

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
