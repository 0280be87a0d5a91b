using ScaleLink.Daemon.Ledger;
using Shared;

namespace Daemon.Tests.Ledger;

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

    public void Dispose() => _folder.Delete(recursive: true);
}
