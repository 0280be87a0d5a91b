using ScaleLink.Probing.Ports;

namespace ScaleLink.Client.Doctor;

/// <summary>
/// Services that take serial adapters for something else: one dials every new port for a modem, one takes adapters of common kinds for braille
/// displays. Source: their own manuals, from memory.
/// </summary>
internal static class SeizingServices
{
    private const string Ignored = "ID_MM_DEVICE_IGNORE=1";
    private const string PortIgnored = "ID_MM_PORT_IGNORE=1";

    public static IEnumerable<CheckResult> Of(SystemTree tree, IReadOnlyList<RunningProcess> processes, SerialPortName port, UsbAdapter adapter)
    {
        var properties = adapter.Properties(tree).ToHashSet(StringComparer.Ordinal);
        if (!processes.Any(p => p.Name == "ModemManager"))
            yield return CheckResult.Pass("modem probing", port.Asked, "No service probes adapters for modems.");
        else if (properties.Contains(Ignored) || properties.Contains(PortIgnored))
            yield return CheckResult.Pass("modem probing", port.Asked, "ModemManager runs and has been told to leave it alone.");
        else
            yield return CheckResult.Fail("modem probing", port.Asked, DoctorCodes.AdapterSeized, "ModemManager runs and writes to every new adapter, to see whether it is a modem.", "Install the device rule of docs/adapters.md for this adapter, or stop the service: sudo systemctl disable --now ModemManager");
        yield return processes.Any(p => p.Name.StartsWith("brltty", StringComparison.Ordinal))
            ? CheckResult.Fail("braille service", port.Asked, DoctorCodes.AdapterSeized, "brltty runs: it takes adapters of common kinds for braille displays and unbinds them.", "Unless somebody needs it: sudo systemctl mask --now brltty brltty-udev")
            : CheckResult.Pass("braille service", port.Asked, "No service takes adapters for braille displays.");
    }
}
