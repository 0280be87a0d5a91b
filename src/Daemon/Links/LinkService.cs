using ScaleLink.Daemon.Pipeline;
using ScaleLink.Daemon.Publishing;

namespace ScaleLink.Daemon.Links;

/// <summary>Starts a supervisor for each pad and ends them with the daemon.</summary>
internal sealed class LinkService(LiveBay bay, ILinkFactory factory, BayClock clock, ILogger<LinkService> log) : IHostedService
{
    private readonly List<LinkSupervisor> _supervisors = [];

    public Task StartAsync(CancellationToken cancellationToken)
    {
        foreach (var pad in bay.Pads)
        {
            if (!LinkAddress.TryParse(pad.Configuration.Link, pad.Configuration.Baud, out var address, out var problem))
                throw new StartException("SL-012", problem, "Correct the link in the bay file.");
            var supervisor = new LinkSupervisor(address, factory, () => new PadFrameProtocol(), pad, clock, log);
            _supervisors.Add(supervisor);
            supervisor.Start();
        }

        return Task.CompletedTask;
    }

    public Task StopAsync(CancellationToken cancellationToken)
    {
        foreach (var supervisor in _supervisors)
            supervisor.Dispose();
        return Task.CompletedTask;
    }
}
