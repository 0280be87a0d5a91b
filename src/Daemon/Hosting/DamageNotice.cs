using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Pipeline;

namespace ScaleLink.Daemon.Hosting;

/// <summary>
/// Says what of the ledger was lost or cannot be read: in the log, and as a fault of every pad until the daemon is started again.
/// </summary>
internal sealed class DamageNotice(OpenedLedger opened, LiveBay bay, ILogger<DamageNotice> log) : IHostedService
{
    public Task StartAsync(CancellationToken cancellationToken)
    {
        if (opened.Damage is { } damage)
            Tell(LedgerDamage.Code, damage.Message, damage.Mend);
        opened.Ledger.LeftOut.Found += TellLater;
        TellLeftOut();
        return Task.CompletedTask;
    }

    public Task StopAsync(CancellationToken cancellationToken)
    {
        opened.Ledger.LeftOut.Found -= TellLater;
        return Task.CompletedTask;
    }

    // Whoever came upon it may hold the lock of a pad.
    private void TellLater() => ThreadPool.QueueUserWorkItem(_ => TellLeftOut());

    private void TellLeftOut()
    {
        if (opened.Ledger.LeftOut.Sentence is { } sentence)
            Tell(LeftOutEntry.Code, sentence, LeftOutEntry.Mend);
    }

    private void Tell(string code, string message, string mend)
    {
        log.LogError("{Code}: {Message} {Mend}", code, message, mend);
        foreach (var pad in bay.Pads)
            pad.OnTrouble(code, message, mend, stops: false);
    }
}
