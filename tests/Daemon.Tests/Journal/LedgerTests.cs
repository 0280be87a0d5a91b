using Microsoft.Data.Sqlite;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Workflows.Zeros;

namespace Daemon.Tests.Journal;

public sealed class LedgerTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory();

    private string LedgerPath => Path.Combine(_folder.FullName, "ledger.db");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void A_zero_comes_back_in_the_next_run()
    {
        var zero = new ZeroPoint("SLP-1001", 1234.5, new DateTimeOffset(2026, 11, 3, 9, 0, 0, TimeSpan.Zero), "crew", 0.25);
        using (var ledger = new LedgerDatabase(LedgerPath))
            new ZeroLedger(ledger).Begin().Take(zero.SerialNumber, _ => ZeroLedger.Steps.Entry(zero.TakenAt, zero.Who, zero));
        using var again = new LedgerDatabase(LedgerPath);
        Assert.Equal(zero, new ZeroLedger(again).Latest("SLP-1001"));
        Assert.Null(new ZeroLedger(again).Latest("SLP-1002"));
    }

    [Theory]
    [InlineData("UPDATE entries SET who = 'nobody'")]
    [InlineData("DELETE FROM entries")]
    public void Nothing_in_it_can_be_changed_or_removed(string sql)
    {
        using (var ledger = new LedgerDatabase(LedgerPath))
            ledger.Append(DateTimeOffset.UnixEpoch, "zero", "SLP-1001", "crew", "{}");
        using var connection = new SqliteConnection($"Data Source={LedgerPath};Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        Assert.Contains("append-only", Assert.Throws<SqliteException>(() => command.ExecuteNonQuery()).Message);
    }

    [Fact]
    public void Nobody_but_owner_and_group_reads_it()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows has no such modes.");
        const UnixFileMode owner = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        using (var ledger = new LedgerDatabase(LedgerPath))
        {
            ledger.Append(DateTimeOffset.UnixEpoch, "zero", "SLP-1001", "crew", "{}");
            Assert.Equal(["ledger.db", "ledger.db-shm", "ledger.db-wal", "ledger.db.head"], _folder.GetFiles().Select(f => f.Name).Order());
            Assert.All(_folder.GetFiles(), f => Assert.Equal(owner, f.UnixFileMode & ~UnixFileMode.GroupRead));
        }

        // As an earlier version left it.
        File.SetUnixFileMode(LedgerPath, owner | UnixFileMode.GroupRead | UnixFileMode.OtherRead);
        using var again = new LedgerDatabase(LedgerPath);
        Assert.Equal(owner | UnixFileMode.GroupRead, File.GetUnixFileMode(LedgerPath));
    }

    [Fact]
    public void Each_entry_is_chained_to_the_one_before()
    {
        using (var ledger = new LedgerDatabase(LedgerPath))
        {
            ledger.Append(DateTimeOffset.UnixEpoch, "zero", "SLP-1001", "crew", "{}");
            ledger.Append(DateTimeOffset.UnixEpoch, "zero", "SLP-1001", "crew", "{}");
        }

        using var connection = new SqliteConnection($"Data Source={LedgerPath};Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT count(DISTINCT hash) FROM entries";
        Assert.Equal(2L, command.ExecuteScalar());
    }

    [Fact]
    public void Entries_come_back_as_they_were_written_and_the_chain_tells_an_altered_one()
    {
        using (var ledger = new LedgerDatabase(LedgerPath))
        {
            var first = ledger.Append(DateTimeOffset.UnixEpoch, "note", "one", "Ada", "{}");
            var second = ledger.Append(DateTimeOffset.UnixEpoch.AddSeconds(1), "note", "two", "Ben", "{\"a\":1}");
            Assert.Equal([first, second], ledger.Entries("note"));
            Assert.Equal([second], ledger.Entries("note", "two"));
            Assert.Equal(second, ledger.Entry(second.Id));
            Assert.Equal(first, ledger.Newest("note", "one"));
            Assert.Null(ledger.CheckChain(null));
        }

        using (var hand = new SqliteConnection($"Data Source={LedgerPath};Pooling=False"))
        {
            hand.Open();
            using var alter = hand.CreateCommand();
            alter.CommandText = "DROP TRIGGER entries_never_change; UPDATE entries SET who = 'Eve' WHERE subject = 'two'";
            alter.ExecuteNonQuery();
        }

        using var again = new LedgerDatabase(LedgerPath);
        // Nobody vouches for the hash of the newest entry: it may be the beginning of something worse.
        Assert.Equal(2, again.CheckChain(null));
        // The head beside the ledger does: the entry alone is left out, by name.
        Assert.Null(again.CheckChain(new LedgerHead(2, again.HashOf(2)!)));
        Assert.Empty(again.Entries("note", "two"));
        Assert.Equal((2, "note", "two"), again.LeftOut.All.Select(e => (e.Id, e.Kind, e.Subject)).Single());
        Assert.Single(again.Entries("note", "one"));
    }
}
