using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Journal;

namespace ScaleLink.Daemon.Hosting;

/// <summary>
/// Says what of the ledger was lost or cannot be read: in the log, and as a fault of every pad until the daemon is started again.
/// </summary>
internal sealed class DamageNotice(OpenedLedger opened, LiveBay bay, ILogger<DamageNotice> log) : IHostedService
{
    private bool _isToBeTold;

    public Task StartAsync(CancellationToken cancellationToken)
    {
        if (opened.Damage is { } damage)
            Tell(LedgerCodes.LedgerDamaged, damage.Message, damage.Remedy);
        else if (LedgerTakeOver.Offered(opened.Ledger) is { } offered)
            log.LogWarning("{Diagnostic}", new Diagnostic(LedgerCodes.EntriesBehindDamage, $"{offered.Behind} entries behind a damage of the ledger hold by themselves and are not counted.", LedgerDamage.Offer));
        if (opened.Ledger.Unchained is { Count: > 0 } unchained)
            log.LogWarning("{Diagnostic}", new Diagnostic(LedgerCodes.EntriesUnchained, $"{unchained.Count} entries of the ledger from {unchained[0]} to {unchained[^1]} were taken over from behind a damage: nothing ties them to those before it.", "Look at what they say before you rely on it."));
        opened.Ledger.LeftOut.Found += TellLater;
        TellLeftOut();
        return Task.CompletedTask;
    }

    public Task StopAsync(CancellationToken cancellationToken)
    {
        opened.Ledger.LeftOut.Found -= TellLater;
        return Task.CompletedTask;
    }

    // Whoever came upon it may hold the lock of a pad; and a ledger of a newer version can have thousands, which are told together.
    private void TellLater()
    {
        if (!Interlocked.Exchange(ref _isToBeTold, true))
            ThreadPool.QueueUserWorkItem(_ => TellLeftOut());
    }

    private void TellLeftOut()
    {
        Volatile.Write(ref _isToBeTold, false);
        if (opened.Ledger.LeftOut.Sentence is { } sentence)
            Tell(LedgerCodes.EntryLeftOut, sentence, LeftOutEntry.Remedy);
    }

    private void Tell(Code code, Sentence message, Sentence remedy)
    {
        log.LogError("{Diagnostic}", new Diagnostic(code, message, remedy));
        foreach (var pad in bay.Pads)
            pad.OnTrouble(code, message, remedy, stops: false);
    }
}
