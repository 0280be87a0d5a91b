using Microsoft.Extensions.Time.Testing;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Journal;
using ScaleLink.Measure;

namespace Daemon.Tests.Bay;

public sealed class NoiseLedgerTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory();

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void What_was_learned_is_known_at_the_next_start_and_small_changes_are_not_written()
    {
        var noise = new Corners(0.03, 0.05, 0.04, 0.2);
        using (var database = Open())
        {
            var ledger = At("unit6", database);
            Assert.Null(ledger.Recall());
            ledger.Keep(noise);
            ledger.Keep(1.1 * noise);
            Assert.Single(database.Entries("noise"));
            ledger.Keep(noise.With(Corner.LR, 0.06));
        }

        using var again = Open();
        Assert.Equal(noise.With(Corner.LR, 0.06), At("unit6", again).Recall());
        Assert.Null(At("unit7", again).Recall());
    }

    private LedgerDatabase Open() => new(Path.Combine(_folder.FullName, "ledger.db"));

    private static NoiseLedger At(string bay, LedgerDatabase database) => new(database, bay, new FakeTimeProvider());
}
