using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Links;
using ScaleLink.Daemon.Links.Polling;
using ScaleLink.Daemon.Ports;
using ScaleLink.Daemon.Recording;
using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Hosting;

/// <summary>Starts a supervisor for each link and ends them with the daemon. Several slaves of one line share its link.</summary>
internal sealed class LinkService(LiveBay bay, ILinkFactory factory, FlightRecorder recorder, BayClock clock, TimeProvider time, ILogger<LinkService> log) : IHostedService
{
    private readonly List<LinkSupervisor> _supervisors = [];

    public Task StartAsync(CancellationToken cancellationToken)
    {
        var names = new PortNames();
        foreach (var link in bay.Pads.SelectMany(SourcesOf).GroupBy(s => LinkAddress.NodeOf(s.Source.Link)))
        {
            var members = link.ToList();
            if (!members[0].Source.TryFind(out var address, out var problem))
                throw new StartException(ConfigurationCodes.LinkUnusable, problem, "Correct the link in the bay file.");
            foreach (var (_, source, sink) in members)
                if (address is SerialAddress && names.Uncertainty(source.Link) is { } uncertainty)
                    log.LogWarning("{Source}: {Diagnostic}", sink.Name, uncertainty);
            var tape = recorder.Add(address, [.. members.Select(m => new RecordedSource(m.Channel, m.Source))]);
            var recording = new RecordingLinkFactory(factory, tape, clock);
            var lines = new FaultLines(string.Join(", ", members.Select(m => m.Sink.Name)), time, log);
            var supervisor = new LinkSupervisor(
                address, recording, () => new SilenceLimit(Converse(members, address), members.Max(m => m.Source.ReopenAfter), address.Name), [.. members.Select(m => m.Sink)], clock, lines.Look, log);
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

    private static IConversation Converse(List<(PadChannel Channel, SourceConfiguration Source, IPadSource Sink)> members, LinkAddress address)
    {
        var (channel, source, sink) = members[0];
        return source.Protocol switch
        {
            ProtocolKind.ModbusRtu => new ModbusConversation([.. members.Select(m => new BusSlave(m.Channel.Configuration, m.Source, m.Sink))], new LineTiming(address)),
            ProtocolKind.TextLines => new ListeningConversation(new TextLineProtocol(channel.Configuration, source), sink),
            _ => new ListeningConversation(new PadFrameProtocol(), sink),
        };
    }

    private static IEnumerable<(PadChannel Channel, SourceConfiguration Source, IPadSource Sink)> SourcesOf(PadChannel pad)
    {
        yield return (pad, pad.Configuration.Source, pad);
        if (pad.Configuration.Tilt is { } tilt)
            yield return (pad, tilt, pad.TiltSource!);
    }
}
