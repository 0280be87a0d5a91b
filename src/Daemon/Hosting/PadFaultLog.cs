using ScaleLink.Daemon.Bay;

namespace ScaleLink.Daemon.Hosting;

/// <summary>Writes into the log when a pad's fault begins and when it is over. What its link itself runs into is told by the link.</summary>
internal sealed class PadFaultLog(LiveBay bay, TimeProvider time, ILogger<PadFaultLog> log) : IHostedService
{
    private readonly List<(PadChannel Pad, Action Look)> _watched = [];

    public Task StartAsync(CancellationToken cancellationToken)
    {
        foreach (var pad in bay.Pads)
        {
            var lines = new FaultLines(pad.Name, time, log);
            _watched.Add((pad, () => lines.Look([.. pad.Snapshot().Faults.Where(IsOfPad)])));
            pad.Changed += _watched[^1].Look;
        }

        return Task.CompletedTask;
    }

    public Task StopAsync(CancellationToken cancellationToken)
    {
        foreach (var (pad, look) in _watched)
            pad.Changed -= look;
        return Task.CompletedTask;
    }

    private static bool IsOfPad(Diagnostic fault) => fault.Code == LinkCodes.PadSilent || PadCodes.Area.Holds(fault.Code);
}
