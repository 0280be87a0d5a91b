using Microsoft.Data.Sqlite;
using ScaleLink.Daemon.Journal;

namespace Daemon.Tests.Journal;

/// <summary>
/// Copies of a ledger and its write-ahead log, as a power cut or a bad disk leaves them, cut and garbled at and inside frames. Each
/// opens: what is there afterwards is true; what is missing is either named entry by entry, or it is all that came after a beginning, and somebody is told.
/// Layout of the log: SQLite file format, 4 "The Write-Ahead Log": a header of 32 bytes, frames of 24 bytes and a page.
/// </summary>
public sealed class LedgerDamageTests : IDisposable
{
    private const int Entries = 40;
    private const int InMainFile = 15;
    private const int WalHeader = 32, FrameHeader = 24, Page = 4096;
    private static readonly DateTimeOffset Now = new(2026, 11, 25, 12, 0, 0, TimeSpan.Zero);

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scalelink-damage-");
    private readonly List<LedgerEntry> _truth = [];

    [Fact]
    public void An_undamaged_copy_of_a_ledger_in_use_opens_whole()
    {
        using var opened = Copy("whole", _ => { });
        Assert.Null(opened.Damage);
        Assert.Equal(_truth, opened.Entries);
        Assert.Empty(Directory.GetFiles(_folder.FullName, "whole.db.*opening*"));
    }

    [Fact]
    public void The_log_cut_anywhere_gives_a_beginning_and_says_so()
    {
        var length = new FileInfo(Source() + "-wal").Length;
        var frame = FrameHeader + Page;
        long[] cuts = [0, 1, WalHeader - 1, WalHeader, .. Enumerable.Range(0, 12).SelectMany(i => (long[])[WalHeader + i * 3L * frame, WalHeader + i * 3L * frame + FrameHeader, WalHeader + i * 3L * frame + 2000])];
        foreach (var cut in cuts.Distinct().Where(c => c < length))
            Check($"cut{cut}", path => Cut(path + "-wal", cut));
    }

    [Fact]
    public void The_log_garbled_anywhere_gives_a_beginning_and_says_so()
    {
        var chance = new Random(3);
        var length = new FileInfo(Source() + "-wal").Length;
        for (var i = 0; i < 30; i++)
            Check($"wal{i}", path => Garble(path + "-wal", chance.NextInt64(length), chance.Next(1, 64), chance));
    }

    [Fact]
    public void The_ledger_garbled_or_cut_gives_a_beginning_and_says_so()
    {
        var chance = new Random(5);
        var length = new FileInfo(Source()).Length;
        for (var i = 0; i < 25; i++)
            Check($"main{i}", path => Garble(path, chance.NextInt64(length), chance.Next(1, 64), chance));
        foreach (var cut in (long[])[0, 10, 100, Page, Page + 10, length - 1])
            Check($"short{cut}", path => Cut(path, cut));
    }

    [Fact]
    public void A_rescue_that_was_cut_off_is_finished()
    {
        var path = Path.Combine(_folder.FullName, "half.db");
        using (var rescued = new LedgerDatabase(path + ".rescued"))
            rescued.Append(Now, "zero", "SLP-1", "crew", "{}");
        using var opened = new Opened(LedgerOpening.Open(path, Now));
        Assert.Single(opened.Entries);
    }

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        _folder.Delete(recursive: true);
    }

    private void Check(string name, Action<string> damage)
    {
        using var opened = Copy(name, damage);
        var kept = opened.Ledger.Entries("proof");
        Assert.All(kept, entry => Assert.Equal(_truth[(int)entry.Id - 1], entry));
        if (opened.Damage is null)
        {
            long[] lost = [.. _truth.Select(t => t.Id).Except(kept.Select(k => k.Id))];
            Assert.True(lost.SequenceEqual(opened.Ledger.LeftOut.All.Select(e => e.Id)), $"{name}: {string.Join(' ', lost)} are missing, and nobody is told");
            return;
        }

        Assert.Equal(_truth.Take(kept.Count), kept);
        Assert.Equal(kept.Count, opened.Damage.Kept);
        Assert.True(File.Exists(Path.Combine(_folder.FullName, opened.Damage.DamagedFile)), name);
        Assert.Single(opened.Ledger.Entries("ledger-damage"));
        // It goes on from there.
        opened.Ledger.Append(Now, "zero", "SLP-1", "crew", "{}");
        Assert.Null(opened.Ledger.CheckChain(null));
    }

    private Opened Copy(string name, Action<string> damage)
    {
        var (source, path) = (Source(), Path.Combine(_folder.FullName, $"{name}.db"));
        foreach (var part in (string[])["", "-wal", ".head"])
            File.Copy(source + part, path + part);
        damage(path);
        return new Opened(LedgerOpening.Open(path, Now));
    }

    // Written once: some entries in the main file, the rest in the log, as in the middle of a day's work.
    private string Source()
    {
        var path = Path.Combine(_folder.FullName, "source.db");
        if (_truth.Count > 0)
            return path;
        var live = Path.Combine(_folder.FullName, "live.db");
        using (var ledger = new LedgerDatabase(live))
            Fill(ledger, InMainFile);
        using (var ledger = new LedgerDatabase(live))
        {
            Fill(ledger, Entries - InMainFile);
            foreach (var part in (string[])["", "-wal", ".head"])
                File.Copy(live + part, path + part);
        }

        Assert.True(new FileInfo(path + "-wal").Length > 10 * Page);
        return path;
    }

    private void Fill(LedgerDatabase ledger, int count)
    {
        for (var i = 0; i < count; i++)
            _truth.Add(ledger.Append(Now.AddSeconds(_truth.Count), "proof", "SLP-1001", "crew", $"{{\"text\":\"{new string((char)('a' + i % 26), 100 + 97 * i % 1500)}\"}}"));
    }

    private static void Cut(string path, long length)
    {
        using var file = File.Open(path, FileMode.Open);
        file.SetLength(length);
    }

    private static void Garble(string path, long at, int count, Random chance)
    {
        using var file = File.Open(path, FileMode.Open);
        file.Position = at;
        var bytes = new byte[count];
        chance.NextBytes(bytes);
        file.Write(bytes);
    }

    private sealed class Opened(OpenedLedger opened) : IDisposable
    {
        public LedgerDatabase Ledger => opened.Ledger;

        public LedgerDamage? Damage => opened.Damage;

        public List<LedgerEntry> Entries { get; } = [.. opened.Ledger.WholeChain()];

        public void Dispose() => opened.Ledger.Dispose();
    }
}
