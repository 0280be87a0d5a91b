using System.Diagnostics;
using Microsoft.Data.Sqlite;
using ScaleLink.Daemon.Journal;

namespace Daemon.Tests.Journal;

/// <summary>An entry that takes seconds, since the disk is slow or another program holds the file: whoever reads does not wait for it. The project's own requirement.</summary>
public sealed class SlowDiskTests : IDisposable
{
    private static readonly TimeSpan Slow = TimeSpan.FromSeconds(3), Soon = TimeSpan.FromSeconds(1.5);

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory();

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public async Task What_is_on_record_is_read_while_an_entry_waits()
    {
        var path = Path.Combine(_folder.FullName, "ledger.db");
        using var ledger = new LedgerDatabase(path);
        ledger.Append(DateTimeOffset.UnixEpoch, "zero", "SLP-1001", "crew", "{}");
        using var other = new SqliteConnection($"Data Source={path};Pooling=False");
        other.Open();
        var held = other.BeginTransaction();
        var written = Task.Run(() => ledger.Append(DateTimeOffset.UnixEpoch, "zero", "SLP-1001", "crew", "{}"), TestContext.Current.CancellationToken);
        var begun = Stopwatch.GetTimestamp();
        while (Stopwatch.GetElapsedTime(begun) < Slow)
        {
            var asked = Stopwatch.GetTimestamp();
            Assert.Equal(1, ledger.Newest("zero", "SLP-1001")!.Id);
            Assert.Single(ledger.Entries("zero"));
            Assert.InRange(Stopwatch.GetElapsedTime(asked), TimeSpan.Zero, Soon);
            await Task.Delay(50, TestContext.Current.CancellationToken);
        }

        Assert.False(written.IsCompleted);
        held.Dispose();
        Assert.Equal(2, (await written).Id);
        Assert.Equal(2, ledger.Newest("zero", "SLP-1001")!.Id);
    }
}
