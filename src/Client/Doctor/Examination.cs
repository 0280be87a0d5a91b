using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;
using ScaleLink.Probing.Ports;

namespace ScaleLink.Client.Doctor;

/// <summary>All checks in order: the daemon, the ports, the pads. What cannot be checked without the daemon is named.</summary>
internal sealed class Examination(DaemonConnection daemon, SystemTree tree, TimeSpan listening)
{
    private const double UsualToleranceKg = 0.1;
    private static readonly TimeSpan MoreThanListening = TimeSpan.FromSeconds(5);

    /// <summary>Checks the ports that are named; otherwise the daemon's, and without it every adapter that is plugged in.</summary>
    public async Task<IReadOnlyList<CheckResult>> Run(IReadOnlyList<string> named, CancellationToken stop)
    {
        var findings = new List<CheckResult>();
        var list = await Pads(findings, stop);
        var links = list?.Pads.Select(p => p.Link).Where(l => !l.StartsWith("tcp:", StringComparison.OrdinalIgnoreCase)).Distinct() ?? [];
        var ports = (named.Count > 0 ? named : [.. links]).Select(SerialPorts.Of).ToList();
        if (ports.Count == 0 && list is null)
            ports = [.. SerialPorts.Adapters(tree)];
        findings.AddRange(Ports(ports));
        if (list is null)
            findings.Add(CheckResult.LeftOut("pads", "all", "Without the daemon left out: faults, rate, gaps, converter range and life, noise."));
        else
            findings.AddRange(await Listen(list, stop));
        return findings;
    }

    private async Task<ListPadsResponse?> Pads(List<CheckResult> findings, CancellationToken stop)
    {
        try
        {
            var list = await daemon.Ask(options => daemon.Pads.ListPadsAsync(new ListPadsRequest(), options), stop);
            findings.Add(CheckResult.Pass("daemon", daemon.Name, $"The daemon of bay {PeerText.Clean(list.Bay, 32)} answers."));
            return list;
        }
        catch (ClientException e)
        {
            findings.Add(CheckResult.Fail("daemon", daemon.Name, e.Diagnostic));
            return null;
        }
    }

    private IEnumerable<CheckResult> Ports(List<SerialPortName> ports)
    {
        if (!OperatingSystem.IsLinux())
            return [CheckResult.LeftOut("ports", "all", "The system is asked about its ports on Linux only.")];
        if (ports.Count == 0)
            return [CheckResult.LeftOut("ports", "all", "No serial port is named, configured or plugged in.")];
        var checks = new PortChecks(tree);
        return ports.SelectMany(checks.Of);
    }

    private async Task<IEnumerable<CheckResult>> Listen(ListPadsResponse list, CancellationToken stop)
    {
        var tolerance = await Tolerance(stop);
        var diagnoses = await Task.WhenAll(list.Pads.Select(p => daemon.Ask(
            options => daemon.Pads.DiagnosePadAsync(new DiagnosePadRequest { Corner = p.Corner, Seconds = listening.TotalSeconds }, options), listening + MoreThanListening, stop)));
        return list.Pads.Zip(diagnoses, (pad, diagnosis) => PadChecks.Faults(pad).Concat(PadChecks.Of(diagnosis, tolerance))).SelectMany(f => f);
    }

    private async Task<double> Tolerance(CancellationToken stop)
    {
        try
        {
            return (await daemon.Ask(options => daemon.Feed.GetLoadsAsync(new GetLoadsRequest(), options), stop)).SettledToleranceKg;
        }
        catch (ClientException)
        {
            // It has only just started: no reading yet.
            return UsualToleranceKg;
        }
    }
}
