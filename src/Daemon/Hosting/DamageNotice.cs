using ScaleLink.Daemon.Ledger;
using ScaleLink.Daemon.Publishing;

namespace ScaleLink.Daemon.Hosting;

/// <summary>Says that the ledger was damaged: in the log, and as a fault of every pad until the daemon is started again.</summary>
internal sealed class DamageNotice(OpenedLedger opened, LiveBay bay, ILogger<DamageNotice> log) : IHostedService
{
    public Task StartAsync(CancellationToken cancellationToken)
    {
        if (opened.Damage is { } damage)
        {
            log.LogError("{Code}: {Message} {Mend}", LedgerDamage.Code, damage.Message, damage.Mend);
            foreach (var pad in bay.Pads)
                pad.OnTrouble(LedgerDamage.Code, damage.Message, damage.Mend, stops: false);
        }

        return Task.CompletedTask;
    }

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
}
