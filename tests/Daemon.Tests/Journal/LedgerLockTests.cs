using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Runtime;

namespace Daemon.Tests.Journal;

/// <summary>One at a time, and no other failure is taken for another daemon.</summary>
public sealed class LedgerLockTests : IDisposable
{
    private static readonly DateTimeOffset Now = new(2026, 11, 30, 12, 0, 0, TimeSpan.Zero);

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scalelink-lock-");

    private string Ledger => Path.Combine(_folder.FullName, "ledger.db");

    [Fact]
    public void A_second_one_is_refused_until_the_first_is_given_back()
    {
        using (LedgerLock.Take(Ledger, LockHolder.Me(Now, "unit6")))
        {
            var refused = Assert.Throws<StartException>(() => LedgerLock.Take(Ledger, LockHolder.Me(Now, "unit6")));
            Assert.Equal(LedgerCodes.LedgerHeld, refused.Diagnostic.Code);
            Assert.Contains($"process {Environment.ProcessId} on {Environment.MachineName}, bay unit6, since 2026-11-30 17:30 +05:30", refused.Message);
        }

        LedgerLock.Take(Ledger, LockHolder.Me(Now, "unit6")).Dispose();
    }

    [Fact]
    public void A_holder_that_cannot_be_read_is_still_refused()
    {
        using (LedgerLock.Take(Ledger, LockHolder.Me(Now, "unit6")))
        {
            File.WriteAllText(Ledger + ".holder", "{");
            Assert.Contains("it has not said which", Assert.Throws<StartException>(() => LedgerLock.Take(Ledger, LockHolder.Me(Now, "unit6"))).Message);
        }
    }

    [Fact]
    public void A_holder_of_an_older_version_names_no_bay()
    {
        using (LedgerLock.Take(Ledger, LockHolder.Me(Now, "unit6")))
        {
            File.WriteAllText(Ledger + ".holder", """{"Process":7,"Machine":"box","Since":"2026-11-30T12:00:00+00:00"}""");
            Assert.Contains("process 7 on box, since 2026-11-30 17:30 +05:30", Assert.Throws<StartException>(() => LedgerLock.Take(Ledger, LockHolder.Me(Now, "unit6"))).Message);
        }
    }

    [Fact]
    public void A_lock_file_that_cannot_be_opened_is_no_other_daemon()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "a program that runs cannot be opened for writing: Linux");
        File.CreateSymbolicLink(Ledger + ".lock", Environment.ProcessPath!);
        var failure = Record.Exception(() => LedgerLock.Take(Ledger, LockHolder.Me(Now, "unit6")));
        Assert.True(failure is IOException or UnauthorizedAccessException, $"{failure}");
    }

    public void Dispose() => _folder.Delete(recursive: true);
}
