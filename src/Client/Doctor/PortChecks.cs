using System.Globalization;
using ScaleLink.Probing.Ports;

namespace ScaleLink.Client.Doctor;

/// <summary>What the system shows of a serial port: there, permitted, held by nobody else, quick, and under a name that stays its own.</summary>
internal sealed class PortChecks(SystemTree tree)
{
    // One millisecond is what the rule for enrolled adapters sets; 16 is the factory setting of the adapters that have such a timer.
    private const int LongestLatencyMs = 2;

    private readonly IReadOnlyList<RunningProcess> _processes = Processes.All(tree);

    public IEnumerable<CheckResult> Of(SerialPortName port)
    {
        if (!File.Exists(port.Node))
            return [CheckResult.Fail("port", port.Asked, DoctorCodes.PortMissing, $"{port.Asked} is not there.", "Plug the adapter in, or correct the link in the bay file.")];
        var holders = Processes.Holding(tree, _processes, port.Node, out var unseen);
        return [CheckResult.Pass("port", port.Asked, $"{port.Node} is there."), Permission(port, holders), Holders(port, holders, unseen), .. Adapter(port)];
    }

    private CheckResult Permission(SerialPortName port, IReadOnlyList<RunningProcess> holders)
    {
        if (Ownership.MayOpen(port.Node))
            return CheckResult.Pass("permission", port.Asked, "This user may read and write it.");
        if (holders.Any(h => h.IsDaemon))
            return CheckResult.Pass("permission", port.Asked, "This user may not open it, but the daemon has it open.");
        if (Ownership.GroupOf(port.Node) is not { } group)
            return CheckResult.Fail("permission", port.Asked, DoctorCodes.PortForbidden, "This user may not open it.", "Ask who administers the machine.");
        var name = Ownership.GroupName(tree, group);
        return Ownership.IsIn(tree, group)
            ? CheckResult.Fail("permission", port.Asked, DoctorCodes.PortForbidden, $"This user is in the group {name} that owns it, but the group may not read and write it.", "Install the device rule of docs/adapters.md.")
            : CheckResult.Fail("permission", port.Asked, DoctorCodes.PortForbidden, $"This user is not in the group {name} that owns it.", $"sudo usermod -aG {name} {Environment.UserName}, then log in again.");
    }

    private static CheckResult Holders(SerialPortName port, IReadOnlyList<RunningProcess> holders, int unseen)
    {
        var others = holders.Where(h => !h.IsDaemon).ToList();
        if (others.Count > 0)
            return CheckResult.Fail("holder", port.Asked, DoctorCodes.PortHeld, $"It is held by {string.Join(", ", others)}.", "End that program; two readers take bytes from each other.");
        if (holders.Count > 1)
            return CheckResult.Fail("holder", port.Asked, DoctorCodes.PortHeld, $"It is held by {string.Join(" and ", holders)}.", "Run one daemon only.");
        if (holders.Count == 1)
            return CheckResult.Pass("holder", port.Asked, $"Only {holders[0]} has it open.");
        return unseen > 0
            ? CheckResult.LeftOut("holder", port.Asked, $"Nobody is seen to hold it, but {unseen.ToString(CultureInfo.InvariantCulture)} processes of other users cannot be looked into: run it with sudo.")
            : CheckResult.Pass("holder", port.Asked, "Nobody has it open.");
    }

    private IEnumerable<CheckResult> Adapter(SerialPortName port)
    {
        if (UsbAdapter.Of(tree, port.Kernel) is not { } adapter)
            yield break;
        yield return Latency(port);
        yield return Name(port, adapter);
        foreach (var finding in SeizingServices.Of(tree, _processes, port, adapter))
            yield return finding;
    }

    private CheckResult Latency(SerialPortName port)
    {
        var file = Path.Combine(tree.Sys, "class", "tty", port.Kernel, "device", "latency_timer");
        if (!int.TryParse(SystemTree.Line(file), CultureInfo.InvariantCulture, out var ms))
            return CheckResult.Pass("latency", port.Asked, "The adapter has no latency timer that could be set.");
        return ms <= LongestLatencyMs
            ? CheckResult.Pass("latency", port.Asked, $"Its latency timer is {ms} ms.")
            : CheckResult.Fail("latency", port.Asked, DoctorCodes.AdapterLate, $"The adapter holds bytes back for up to {ms} ms.", $"Install the device rule of docs/adapters.md; until then: echo 1 | sudo tee {file}");
    }

    private CheckResult Name(SerialPortName port, UsbAdapter adapter)
    {
        var stable = SerialPorts.Names(tree, "by-path").FirstOrDefault(p => p.Node == port.Node)?.Asked;
        if (stable is null || stable == port.Asked)
            return CheckResult.Pass("name", port.Asked, stable is null ? "The system keeps no other name for it." : "The name stays with the socket.");
        var twins = Twins(adapter);
        var isById = port.Asked.StartsWith(Path.Combine(tree.Dev, "serial", "by-id"), StringComparison.Ordinal);
        if (isById && twins.Count == 0 && adapter.SerialNumber is not null)
            return CheckResult.Pass("name", port.Asked, "The name stays with the adapter.");
        return isById
            ? CheckResult.Fail("name", port.Asked, DoctorCodes.AdaptersAlike, $"{(twins.Count > 0 ? $"{string.Join(", ", twins)} says the same of itself" : "The adapter has no serial number")}: the name may come to mean another one.", $"Write link = \"{stable}\", which stays with the socket.")
            : CheckResult.Fail("name", port.Asked, DoctorCodes.NameByOrder, "The name goes by the order of plugging in: after a restart it may be another pad's adapter.", $"Write link = \"{stable}\", which stays with the socket.");
    }

    private List<string> Twins(UsbAdapter adapter) =>
    [
        .. SerialPorts.Adapters(tree).Select(p => UsbAdapter.Of(tree, p.Kernel)).OfType<UsbAdapter>()
            .Where(a => a.Kernel != adapter.Kernel && a.Identity == adapter.Identity).Select(a => a.Kernel),
    ];
}
