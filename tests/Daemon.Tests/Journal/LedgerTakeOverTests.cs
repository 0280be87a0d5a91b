using Microsoft.Data.Sqlite;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Runtime;

namespace Daemon.Tests.Journal;

/// <summary>
/// Pages in the middle of a ledger are spoilt, one after another (SQLite file format, 1.6: pages of 4096 bytes). What stands behind them and holds by
/// itself is offered, counts once somebody has decided so, with the numbers that it always had, and stays marked.
/// </summary>
public sealed class LedgerTakeOverTests : IDisposable
{
    private const int Entries = 60, Page = 4096;
    private static readonly DateTimeOffset Now = new(2026, 11, 30, 12, 0, 0, TimeSpan.Zero);

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scalelink-behind-");
    private readonly List<LedgerEntry> _truth = [];

    public LedgerTakeOverTests()
    {
        using var ledger = new LedgerDatabase(Source);
        for (var i = 0; i < Entries; i++)
            _truth.Add(ledger.Append(Now.AddSeconds(i), "proof", "SLP-1001", "crew", $"{{\"text\":\"{new string((char)('a' + i % 26), 300 + 97 * i % 900)}\"}}"));
    }

    private string Source => Path.Combine(_folder.FullName, "source.db");

    [Fact]
    public void Whichever_page_is_spoilt_what_holds_behind_it_counts_again_once_it_is_taken_over()
    {
        var offers = 0;
        for (var page = 1; page < new FileInfo(Source).Length / Page; page++)
        {
            var path = Spoilt($"page{page}.db", page);
            var opened = LedgerOpening.Open(path, Now);
            long kept;
            using (var ledger = opened.Ledger)
            {
                kept = ledger.Entries("proof").Count;
                Assert.Equal(_truth.Take((int)kept), ledger.Entries("proof"));
                if (opened.Damage is not { Behind: > 0 } damage)
                {
                    Assert.Throws<StartException>(() => LedgerTakeOver.Take(ledger, "Kim", Now));
                    continue;
                }

                offers++;
                Assert.Contains($"{damage.Behind} hold by themselves", damage.Message);
                Assert.Contains("--take-over", damage.Remedy);
                LedgerTakeOver.Take(ledger, "Kim", Now.AddMinutes(1));
                Assert.Equal(kept, ledger.Entries("proof").Count);
            }

            using var after = Whole(path);
            var proof = after.Entries("proof");
            Assert.Equal(kept + opened.Damage.Behind, proof.Count);
            Assert.All(proof, entry => Assert.Equal(_truth[(int)entry.Id - 1], entry));
            Assert.Equal(proof.Skip((int)kept).Select(e => e.Id), after.Unchained);
            Assert.Equal("Kim", after.Entries("taken-over").Single().Who);
            Assert.StartsWith("Record: ", TakenOver.Remark(after, 1, Entries));
            Assert.Equal("", TakenOver.Remark(after, 1, kept));
            Assert.Null(LedgerTakeOver.Offered(after));
        }

        Assert.InRange(offers, 5, int.MaxValue);
    }

    [Fact]
    public void What_the_crew_did_meanwhile_stays_and_comes_after()
    {
        var path = WithOffer();
        LedgerEntry meanwhile;
        using (var ledger = LedgerOpening.Open(path, Now).Ledger)
            meanwhile = ledger.Append(Now.AddHours(1), "proof", "SLP-1001", "crew", "{}");
        TakeOver(path);
        using var after = Whole(path);
        Assert.Equal(meanwhile, after.Newest("proof", "SLP-1001"));
        Assert.Equal(_truth[^1], after.Newest("proof", "SLP-1001", before: meanwhile.Id));
        Assert.Equal(after.Entries("proof").Select(e => e.Id).Order(), after.Entries("proof").Select(e => e.Id));
        // It goes on from there, chained.
        after.Append(Now.AddHours(2), "zero", "SLP-1001", "crew", "{}");
        Assert.Null(after.CheckChain(null));
    }

    [Fact]
    public void One_that_is_altered_after_it_was_taken_over_is_left_out_by_name()
    {
        var path = WithOffer();
        TakeOver(path);
        Alter(path, $"DROP TRIGGER unchained_never_change; UPDATE unchained SET body = '{{}}' WHERE id = {Entries - 3}");
        using var after = Whole(path);
        Assert.Equal(Entries - 3, after.LeftOut.All.Single().Id);
        Assert.DoesNotContain(Entries - 3L, after.Unchained);
        Assert.Null(after.Entry(Entries - 3));
        Assert.NotNull(after.Entry(Entries - 2));
    }

    [Fact]
    public void What_was_taken_over_outlives_the_next_damage_on_either_side_of_it()
    {
        foreach (var first in (bool[])[true, false])
        {
            var path = WithOffer($"again{first}.db");
            TakeOver(path);
            List<long> before;
            using (var ledger = Whole(path))
            {
                before = [.. ledger.Entries("proof").Select(e => e.Id)];
                for (var i = 0; i < 5; i++)
                    ledger.Append(Now.AddHours(i), "proof", "SLP-1001", "crew", "{}");
            }

            // Two beside each other: neither can be told to be altered alone.
            var broken = first ? 2 : Entries + 4;
            Alter(path, $"DROP TRIGGER entries_never_change; UPDATE entries SET body = '[]' WHERE id IN ({broken}, {broken + 1})");
            var opened = LedgerOpening.Open(path, Now.AddDays(1));
            using (var ledger = opened.Ledger)
            {
                Assert.InRange(opened.Damage!.Behind, 1, int.MaxValue);
                Assert.Equal(first ? before.Where(id => id < 2) : before, ledger.Entries("proof").Select(e => e.Id).Where(id => id <= Entries));
            }

            TakeOver(path, Now.AddDays(2));
            using var after = Whole(path);
            // The first entry behind a gap has nothing to be held against, and is lost with what was altered.
            Assert.Equal(first ? before.Where(id => id is < 2 or > 4 || after.Entry(id) is not null) : before, after.Entries("proof").Select(e => e.Id).Where(id => id <= Entries));
            Assert.NotNull(after.Entry(Entries));
        }
    }

    [Fact]
    public void Nothing_to_take_over_no_name_a_daemon_at_work_and_a_file_that_is_gone_are_told()
    {
        Assert.Equal(LedgerCodes.NothingToTakeOver, Refused(Source, "Kim"));
        var path = WithOffer();
        using (LedgerOpening.Open(path, Now).Ledger)
        {
        }

        Assert.Equal(CalibrationCodes.NameOrReasonMissing, Refused(path, " \u202e "));
        using (LedgerLock.Take(path, LockHolder.Me(Now, "unit6")))
            Assert.Equal(LedgerCodes.LedgerHeld, Refused(path, "Kim"));
        var damaged = Directory.GetFiles(_folder.FullName, "offer.db.damaged-*").Single(f => !f.EndsWith(".head", StringComparison.Ordinal));
        File.Move(damaged, damaged + ".away");
        Assert.Equal(LedgerCodes.NothingToTakeOver, Refused(path, "Kim"));
        File.Move(damaged + ".away", damaged);
        TakeOver(path);
        Assert.Equal(LedgerCodes.NothingToTakeOver, Refused(path, "Kim"));
    }

    public void Dispose() => _folder.Delete(recursive: true);

    private static Code Refused(string path, string who) =>
        Assert.Throws<StartException>(() => LedgerTakeOver.Run(path, "unit6", who, TimeProvider.System)).Diagnostic.Code;

    private static void TakeOver(string path, DateTimeOffset? at = null)
    {
        using var ledger = LedgerOpening.Open(path, at ?? Now).Ledger;
        LedgerTakeOver.Take(ledger, "Kim", at ?? Now);
    }

    private static LedgerDatabase Whole(string path)
    {
        var opened = LedgerOpening.Open(path, Now);
        Assert.Null(opened.Damage);
        return opened.Ledger;
    }

    // Two altered entries beside each other break the chain and leave everything behind them.
    private string WithOffer(string name = "offer.db")
    {
        var path = Path.Combine(_folder.FullName, name);
        Copy(path);
        Alter(path, "DROP TRIGGER entries_never_change; UPDATE entries SET body = '[]' WHERE id IN (20, 21)");
        return path;
    }

    private string Spoilt(string name, int page)
    {
        var path = Path.Combine(_folder.FullName, name);
        Copy(path);
        using var file = File.Open(path, FileMode.Open);
        file.Position = page * Page;
        file.Write(new byte[Page]);
        return path;
    }

    private void Copy(string path)
    {
        foreach (var part in (string[])["", ".head"])
            File.Copy(Source + part, path + part);
    }

    private static void Alter(string path, string how)
    {
        using var hand = new SqliteConnection($"Data Source={path};Pooling=False");
        hand.Open();
        using var alter = hand.CreateCommand();
#pragma warning disable CA2100 // A text of this class.
        alter.CommandText = how;
#pragma warning restore CA2100
        alter.ExecuteNonQuery();
    }
}
