using Microsoft.Data.Sqlite;
using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Journal;

/// <summary>
/// The append-only record of the bay: one SQLite file, write-ahead log, synchronous FULL, so that what was acknowledged survives a kill and a power cut.
/// Triggers refuse every change and deletion; each entry carries the hash of the one before it, so that a missing or altered entry shows.
/// </summary>
internal sealed class LedgerDatabase : IDisposable
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
        """ + "\n" + UnchainedEntries.Schema + StepNumbers.Schema;

    private const string Columns = "id, at, kind, subject, who, software, body, hash";
    private const string Chained = "entries", ChainedAndTakenOver = $"(SELECT {Columns} FROM entries UNION ALL SELECT {Columns} FROM unchained)";

    private const int All = int.MaxValue;

    // Whoever holds the ledger for longer is told of; nobody waits for a backup that hangs.
    private const int LongestWaitSeconds = 5;

    private static readonly string Software = "scalelink " + (typeof(LedgerDatabase).Assembly.GetName().Version?.ToString(3) ?? "0");

    // Whoever reads does not wait for whoever writes: a pad that comes back wants its zero though the disk takes seconds for an entry.
    private readonly Lock _writing = new();
    private readonly Lock _reading = new();
    private HashSet<long> _altered = [];
    private readonly SqliteConnection _connection;
    private readonly SqliteConnection _reader;
    private readonly LedgerHeadFile _head;
    private LedgerHead? _unwrittenHead;
    private string _readable = Chained;

    /// <summary>Opens the ledger at <paramref name="path"/>, or makes it.</summary>
    /// <exception cref="IOException">The folder is missing or full.</exception>
    /// <exception cref="UnauthorizedAccessException">This user may not write there.</exception>
    /// <exception cref="SqliteException">The file is damaged, or no ledger; <see cref="LedgerOpening"/> deals with that.</exception>
    public LedgerDatabase(string path)
    {
        (Path, _head) = (path, new LedgerHeadFile(path));
        KeepPrivate(path);
        (_connection, _reader) = (Connection(path), Connection(path));
        try
        {
            _connection.Open();
            using var command = Command(_connection, Schema);
            command.ExecuteNonQuery();
            _reader.Open();
        }
        catch
        {
            Dispose();
            throw;
        }
    }

    /// <summary>Where it lies.</summary>
    public string Path { get; }

    /// <summary>Entries that are here and cannot be used.</summary>
    public LeftOutEntries LeftOut { get; } = new();

    /// <summary>Numbers of the entries that were taken over from behind a damage, in order: they count, and are not chained.</summary>
    public IReadOnlyList<long> Unchained { get; private set; } = [];

    /// <summary>Appends an entry; it is on the disk when this returns.</summary>
    /// <param name="at">When it happened, UTC.</param>
    /// <param name="kind">What it is, such as <c>zero</c>.</param>
    /// <param name="subject">What it is about, such as a pad's serial number.</param>
    /// <param name="who">Who did it.</param>
    /// <param name="body">JSON.</param>
    /// <param name="number">Its number, behind all that are here; nothing: the next one.</param>
    /// <param name="alongside">Entries from behind a damage that this one vouches for: they come with it or not at all.</param>
    /// <returns>The entry as it stands in the ledger.</returns>
    public LedgerEntry Append(DateTimeOffset at, string kind, string subject, string who, string body, long? number = null, IReadOnlyList<UnchainedEntry>? alongside = null)
    {
        lock (_writing)
        {
            // No more than one entry may lie beyond the head.
            if (_unwrittenHead is { } behind)
                WriteHead(behind);
            using var transaction = _connection.BeginTransaction();
            var stored = StoredEntry.Following(LastHash(transaction), at, kind, subject, who, Software, body);
            UnchainedEntries.Add(_connection, transaction, alongside ?? []);
            using var insert = Command(_connection,
                "INSERT INTO entries(id, at, kind, subject, who, software, body, hash) VALUES($id, $at, $kind, $subject, $who, $software, $body, $hash) RETURNING id",
                [("$id", (object?)number ?? DBNull.Value), .. stored.Columns]);
            insert.Transaction = transaction;
            var id = (long)insert.ExecuteScalar()!;
            StepNumbers.Keep(_connection, transaction, id);
            transaction.Commit();
            KeepHead(new LedgerHead(id, stored.Hash));
            return (stored with { Id = id }).Read()!;
        }
    }

    /// <summary>Newest entry of that kind about that subject; with a number, the newest before that entry.</summary>
    public LedgerEntry? Newest(string kind, string subject, long before = long.MaxValue) =>
        Read("WHERE kind = $kind AND subject = $subject AND id < $before ORDER BY id DESC", most: 1, ("$kind", kind), ("$subject", subject), ("$before", before)).FirstOrDefault();

    /// <summary>All entries of that kind, oldest first; with a subject, only those about it.</summary>
    public IReadOnlyList<LedgerEntry> Entries(string kind, string? subject = null) =>
        subject is null
            ? Read("WHERE kind = $kind ORDER BY id", All, ("$kind", kind))
            : Read("WHERE kind = $kind AND subject = $subject ORDER BY id", All, ("$kind", kind), ("$subject", subject));

    /// <summary>The entry with that number.</summary>
    public LedgerEntry? Entry(long id) => Read("WHERE id = $id", most: 1, ("$id", id)).FirstOrDefault();

    /// <summary>Numbers of the entries that a caller's step has written, in order; none: that step is not on record.</summary>
    public IReadOnlyList<long> EntriesOfStep(string number)
    {
        lock (_reading)
            return StepNumbers.EntriesOf(_reader, number);
    }

    /// <summary>The newest entry before that number, whatever it is about.</summary>
    public LedgerEntry? Before(long id) => Read("WHERE id < $id ORDER BY id DESC", most: 1, ("$id", id)).FirstOrDefault();

    /// <summary>When the newest entry of all happened, UTC; nothing in an empty ledger.</summary>
    public DateTimeOffset? NewestAt => Read("ORDER BY id DESC", most: 1).FirstOrDefault()?.At;

    /// <summary>The hash that stands in the entry with that number, whether the entry can be used or not.</summary>
    internal string? HashOf(long id)
    {
        lock (_reading)
        {
            using var query = Command(_reader, "SELECT hash FROM entries WHERE id = $id", ("$id", id));
            return query.ExecuteScalar() as string;
        }
    }

    /// <summary>Whether the file's own structure is sound.</summary>
    public bool IsSound()
    {
        lock (_reading)
        {
            using var check = Command(_reader, "PRAGMA quick_check(1)");
            return check.ExecuteScalar() as string == "ok";
        }
    }

    /// <summary>Takes over an entry of a damaged ledger as it stands; its hash must follow from what is here.</summary>
    internal void TakeOver(LedgerEntry entry)
    {
        lock (_writing)
        {
            using var insert = Command(_connection,
                "INSERT INTO entries(id, at, kind, subject, who, software, body, hash) VALUES($id, $at, $kind, $subject, $who, $software, $body, $hash)",
                [("$id", entry.Id), .. StoredEntry.Of(entry).Columns]);
            insert.ExecuteNonQuery();
        }
    }

    /// <summary>Takes over, from a damaged ledger, entries that had been taken over there.</summary>
    internal void TakeOver(IReadOnlyList<UnchainedEntry> entries)
    {
        lock (_writing)
        {
            using var transaction = _connection.BeginTransaction();
            UnchainedEntries.Add(_connection, transaction, entries);
            transaction.Commit();
        }
    }

    /// <summary>
    /// Goes through the chain of hashes and leaves out what was altered since it was written. The hash that stands in an entry goes into the one after it,
    /// so an entry whose own text does not fit its hash is known to be altered alone when the next one follows from that hash.
    /// </summary>
    /// <param name="known">The newest entry as it is known beside the ledger: it vouches for the last hash.</param>
    /// <returns>Number of the first entry from which the chain does not hold; nothing when it is whole but for the entries left out.</returns>
    internal long? CheckChain(LedgerHead? known)
    {
        _readable = Chained;
        var (last, suspect) = ("", (StoredEntry?)null);
        List<StoredEntry> altered = [];
        foreach (var entry in Stored("ORDER BY id", All))
        {
            var fits = entry.Hash == entry.HashAfter(last);
            if (suspect is not null)
            {
                if (!fits)
                    return suspect.Id;
                altered.Add(suspect);
            }

            suspect = fits ? null : entry;
            last = entry.Hash;
        }

        if (suspect is not null && (known is null || known.Id != suspect.Id || known.Hash != suspect.Hash))
            return suspect.Id;
        if (suspect is not null)
            altered.Add(suspect);
        var unchained = TakenOver();
        altered.AddRange(unchained.Where(u => !u.Holds).Select(u => u.Stored));
        foreach (var entry in altered)
            LeftOut.Add(entry.Id, PlainText.Clean(entry.Kind, 32), PlainText.Clean(entry.Subject, 64), "it was altered after it was written");
        _altered = [.. altered.Select(e => e.Id)];
        Unchained = [.. unchained.Where(u => u.Holds).Select(u => u.Stored.Id)];
        // Hardly any ledger has such, and the others need not be asked twice.
        _readable = unchained.Count == 0 ? Chained : ChainedAndTakenOver;
        return null;
    }

    /// <summary>The entries that were once taken over, as they stand here, whether they hold or not.</summary>
    /// <exception cref="SqliteException">They cannot be read.</exception>
    internal List<UnchainedEntry> TakenOver()
    {
        lock (_reading)
            return UnchainedEntries.Read(_reader);
    }

    /// <summary>The highest number in the chain; nothing where it is empty or that cannot be read.</summary>
    internal long? HighestId() => TryRead("ORDER BY id DESC")?.Id;

    /// <summary>The entries from the first on, as long as each can be read and follows from the one before.</summary>
    internal IEnumerable<LedgerEntry> WholeChain()
    {
        var (last, id) = ("", 0L);
        while (TryRead("WHERE id > $after ORDER BY id", ("$after", id)) is { } stored && stored.Hash == stored.HashAfter(last) && stored.Read() is { } entry)
        {
            yield return entry;
            (last, id) = (entry.Hash, entry.Id);
        }
    }

    /// <summary>The first entry of those; nothing where there is none, or it lies on a damaged page.</summary>
    internal StoredEntry? TryRead(string which, params (string Name, object Value)[] parameters)
    {
        try
        {
            return Stored(which, most: 1, parameters).FirstOrDefault();
        }
        catch (Exception e) when (e is SqliteException or InvalidCastException or InvalidOperationException)
        {
            return null;
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _reader.Dispose();
        _connection.Dispose();
    }

    private List<LedgerEntry> Read(string which, int most, params (string Name, object Value)[] parameters) =>
        [.. Stored(which, most, parameters).Select(stored => stored.Read()).OfType<LedgerEntry>()];

    private List<StoredEntry> Stored(string which, int most, params (string Name, object Value)[] parameters)
    {
        lock (_reading)
        {
            using var query = Command(_reader, $"SELECT {Columns} FROM {_readable} {which}", parameters);
            using var reader = query.ExecuteReader();
            List<StoredEntry> entries = [];
            while (entries.Count < most && reader.Read())
                if (reader.GetInt64(0) is var id && !_altered.Contains(id))
                    entries.Add(new(id, reader.GetString(1), reader.GetString(2), reader.GetString(3), reader.GetString(4), reader.GetString(5), reader.GetString(6), reader.GetString(7)));
            return entries;
        }
    }

    // A log that is made beside it takes its rights from the ledger.
    private static void KeepPrivate(string path)
    {
        if (!File.Exists(path))
            PrivateFiles.Open(path, FileMode.CreateNew).Dispose();
        foreach (var part in (string[])["", "-wal", "-shm", ".head"])
            PrivateFiles.Shut(path + part);
    }

    // The entry is on the disk and stays there, whether the head can follow at once or not.
    private void KeepHead(LedgerHead head)
    {
        _unwrittenHead = head;
        try
        {
            WriteHead(head);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // The next entry is refused until the head can be written.
        }
    }

    private void WriteHead(LedgerHead head)
    {
        _head.Write(head);
        _unwrittenHead = null;
    }

    private static SqliteConnection Connection(string path) =>
        new(new SqliteConnectionStringBuilder { DataSource = path, Pooling = false, DefaultTimeout = LongestWaitSeconds }.ToString());

    private static SqliteCommand Command(SqliteConnection connection, string text, params (string Name, object Value)[] parameters)
    {
        var command = connection.CreateCommand();
#pragma warning disable CA2100 // Every text is a constant of this class; values go in as parameters.
        command.CommandText = text;
#pragma warning restore CA2100
        foreach (var (name, value) in parameters)
            command.Parameters.AddWithValue(name, value);
        return command;
    }

    private string LastHash(SqliteTransaction transaction)
    {
        using var query = _connection.CreateCommand();
        query.Transaction = transaction;
        query.CommandText = "SELECT hash FROM entries ORDER BY id DESC LIMIT 1";
        return query.ExecuteScalar() as string ?? "";
    }
}
