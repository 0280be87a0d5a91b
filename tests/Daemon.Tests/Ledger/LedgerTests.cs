using Microsoft.Data.Sqlite;
using ScaleLink.Daemon.Ledger;
using ScaleLink.Daemon.Pipeline;

namespace Daemon.Tests.Ledger;

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
            new ZeroLedger(ledger).Append(zero);
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
}
