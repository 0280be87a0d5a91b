using ScaleLink.Probing.Ports;
using ScaleLink.Probing.Recognition;

namespace ScaleLink.Probing.Search;

/// <summary>Looks at one port: listens, and asks where it may.</summary>
internal sealed class PortProbe(string port, SearchSettings settings, TimeProvider time, SystemTree tree, IProgress<SearchProgress>? progress)
{
    private readonly bool _hasRates = settings.TerminalsHaveRates || !SystemTree.RealPath(port).StartsWith("/dev/pts/", StringComparison.Ordinal);

    /// <summary>What is on it.</summary>
    /// <exception cref="PortException">SL-471 to SL-475.</exception>
    /// <exception cref="OperationCanceledException"><paramref name="stop"/> was asked for.</exception>
    public PortFinding Find(CancellationToken stop)
    {
        var first = (settings.Asking == Asking.Only ? LineSetting.ToAsk(settings, _hasRates) : LineSetting.ToListen(settings, _hasRates))[0];
        using var opened = ProbedPort.Open(port, first.Baud, first.Format, time);
        if (settings.Asking == Asking.Only)
            return Ask(opened, stop);
        var heard = new SpeakerSearch(opened, settings, _hasRates, Tell).Find(stop);
        return settings.Asking == Asking.WhereSilent && heard.Bytes == 0 ? Ask(opened, stop) : Complete(heard);
    }

    private PortFinding Ask(ProbedPort opened, CancellationToken stop) => Complete(new BusSearch(opened, settings, _hasRates, time, Tell).Find(stop));

    private PortFinding Complete(PortFinding finding) => finding with { Port = port, Link = SerialPorts.StableName(tree, port), Baud = _hasRates ? finding.Baud : null };

    private void Tell(string doing) => progress?.Report(new SearchProgress(port, doing));
}
