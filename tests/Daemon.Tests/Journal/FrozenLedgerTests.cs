using Microsoft.Data.Sqlite;
using ScaleLink.Daemon.Journal;
using Shared;

namespace Daemon.Tests.Journal;

/// <summary>
/// Ledgers that released builds have written (tests/ledgers, a folder for each shape) open with the same result in this build. The README
/// there tells where each comes from.
/// </summary>
public sealed class FrozenLedgerTests : IDisposable
{
    private static readonly DateTimeOffset Now = new(2026, 11, 30, 12, 0, 0, TimeSpan.Zero);

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scalelink-frozen-");

    public static TheoryData<string> Ledgers() => [.. FrozenLedgers.All];

    [Theory, MemberData(nameof(Ledgers))]
    public void Opens_with_the_same_result(string frozen)
    {
        var opened = LedgerOpening.Open(FrozenLedgers.CopyTo(_folder, frozen), Now);
        using var ledger = opened.Ledger;
        Assert.Null(opened.Damage);
        Approved.Matches(LedgerStory.Of(ledger), "tests", "ledgers", frozen + ".approved.txt");
    }

    [Theory, MemberData(nameof(Ledgers))]
    public void With_any_one_entry_altered_it_opens_less_that_entry_which_is_named(string frozen) =>
        Spoil(frozen, "UPDATE entries SET body = substr(body, 1, length(body) / 2) || '#' || substr(body, length(body) / 2 + 2) WHERE id = $id", "it was altered after it was written");

    [Theory, InlineData("0.1.0/work-session")]
    public void With_any_one_time_altered_it_opens_less_that_entry_which_is_named(string frozen) =>
        Spoil(frozen, "UPDATE entries SET at = 'nonsense' WHERE id = $id", "it was altered after it was written");

    [Fact]
    public void Every_kind_of_entry_and_every_step_is_among_them()
    {
        List<LedgerEntry> entries = [];
        foreach (var frozen in FrozenLedgers.All.Where(f => f.StartsWith("0.1.0/", StringComparison.Ordinal)))
            using (var ledger = new LedgerDatabase(FrozenLedgers.CopyTo(_folder, frozen)))
                entries.AddRange(ledger.WholeChain());
        string[] kinds =
        [
            "calibration", "car", "car-in-bay", "lean-zero", "ledger-damage", "noise", "paddock-watch", "patch-corrections", "patch-survey",
            "proof", "rotation", "work", "zero", "zero-check", "zero-tracking",
        ];
        Assert.Equal(kinds, entries.Select(e => e.Kind).Distinct().Order(StringComparer.Ordinal));
        foreach (var step in (string[])["started", "check", "capture", "adjustment", "undo", "named", "confirmed", "heights", "ended"])
            Assert.Contains(entries, e => e.Kind == "work" && e.Body.StartsWith($$"""{"step":"{{step}}",""", StringComparison.Ordinal) || e.Body == $$"""{"step":"{{step}}"}""");
        foreach (var happened in (string[])["begun", "taken", "skipped", "steppedBack", "runAgain", "finished", "ended"])
            Assert.Contains(entries, e => e.Kind == "proof" && e.Body.Contains($"\"{happened}\":", StringComparison.Ordinal));
        foreach (var happened in (string[])["weighed", "thrownAway", "finished", "ended"])
            Assert.Contains(entries, e => e.Kind == "rotation" && e.Body.Contains($"\"{happened}\":", StringComparison.Ordinal));
    }

    // What is expected is told by a ledger into which the entry never came.
    private void Spoil(string frozen, string how, string because)
    {
        List<LedgerEntry> whole;
        using (var ledger = new LedgerDatabase(FrozenLedgers.CopyTo(_folder, frozen)))
            whole = [.. ledger.WholeChain()];
        foreach (var spoilt in whole)
        {
            var path = FrozenLedgers.CopyTo(_folder, frozen);
            using (var hand = new SqliteConnection($"Data Source={path};Pooling=False"))
            {
                hand.Open();
                using var alter = hand.CreateCommand();
#pragma warning disable CA2100 // A constant of this class.
                alter.CommandText = "DROP TRIGGER entries_never_change; " + how;
#pragma warning restore CA2100
                alter.Parameters.AddWithValue("$id", spoilt.Id);
                alter.ExecuteNonQuery();
            }

            var opened = LedgerOpening.Open(path, Now);
            using var ledger = opened.Ledger;
            Assert.Null(opened.Damage);
            var named = ledger.LeftOut.All.Single();
            Assert.Equal((spoilt.Id, spoilt.Kind, spoilt.Subject, because), (named.Id, named.Kind, named.Subject, named.Because));
            Assert.Equal(Without(whole, spoilt), LedgerStory.Of(ledger));
        }
    }

    private string Without(List<LedgerEntry> whole, LedgerEntry one)
    {
        var path = Path.Combine(_folder.FullName, $"without-{Guid.NewGuid():N}.db");
        using var ledger = new LedgerDatabase(path);
        foreach (var entry in whole.Where(e => e.Id != one.Id))
            ledger.TakeOver(entry);
        return LedgerStory.Of(ledger);
    }

    public void Dispose() => _folder.Delete(recursive: true);
}
