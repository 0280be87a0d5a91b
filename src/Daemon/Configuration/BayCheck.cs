using System.Net;
using System.Text.RegularExpressions;
using ScaleLink.Daemon.Ports;

namespace ScaleLink.Daemon.Configuration;

/// <summary>What no single line can show: pads that contradict each other, ports that are not there.</summary>
internal static partial class BayCheck
{
    private static readonly int[] CommonBauds =
        [1200, 2400, 4800, 9600, 19200, 38400, 57600, 115200, 230400, 460800, 500000, 921600, 1000000, 1500000, 2000000, 3000000, 4000000];

    public static IEnumerable<Diagnostic> Find(BayConfiguration bay) =>
    [
        .. BayName(bay), .. Count(bay), .. Corners(bay), .. Links(bay), .. Sharing(bay), .. SerialNumbers(bay), .. Bauds(bay), .. Listening(bay),
    ];

    private static IEnumerable<Diagnostic> BayName(BayConfiguration bay)
    {
        if (bay.Bay.Length > 0 && !NamePattern().IsMatch(bay.Bay))
            yield return FileMistake.At(1, ConfigurationCodes.BayNameUnusable, $"bay = \"{bay.Bay}\" cannot stand in a topic.", "Use 1 to 32 letters, digits, - and _.");
    }

    private static IEnumerable<Diagnostic> Count(BayConfiguration bay)
    {
        if (bay.Pads.Count == 0)
            yield return FileMistake.At(0, ConfigurationCodes.NoPads, "The file names no pads.", "Add one [[pads]] block for each pad.");
    }

    private static IEnumerable<Diagnostic> Corners(BayConfiguration bay) =>
        Repeated(bay, p => Enum.IsDefined(p.Corner) ? p.Corner.ToString() : null)
            .Select(r => FileMistake.At(r.Pad.Line, ConfigurationCodes.CornerTwice, $"Two pads stand under {r.Key} (the first at line {r.First.Line}).", "Give each corner one pad."));

    private static IEnumerable<Diagnostic> SerialNumbers(BayConfiguration bay) =>
        Repeated(bay, p => p.SerialNumber)
            .Select(r => FileMistake.At(r.Pad.Line, ConfigurationCodes.SerialNumberTwice, $"{Name(r.Pad)} and {Name(r.First)} claim the same pad, serial number {r.Key}.", "Read the number on each pad and correct one of them."));

    private static IEnumerable<Diagnostic> Links(BayConfiguration bay)
    {
        foreach (var (name, source) in Sources(bay).Where(s => s.Source.Link.Length > 0))
        {
            if (!source.TryFind(out var address, out var problem))
                yield return FileMistake.At(source.Line, ConfigurationCodes.LinkUnusable, $"{name}: {problem}", "Write a device path such as /dev/serial/by-path/..., COM3, or tcp://host:port.");
            else if (SerialPortTrouble.BeforeOpening(address) is { } trouble)
                yield return FileMistake.At(source.Line, trouble.Code, $"{name}: {trouble.Message}", trouble.Remedy);
        }
    }

    private static IEnumerable<Diagnostic> Sharing(BayConfiguration bay)
    {
        foreach (var link in Sources(bay).Where(s => s.Source.Link.Length > 0).GroupBy(s => LinkAddress.NodeOf(s.Source.Link)))
        {
            var first = link.First();
            foreach (var (name, source) in link.Skip(1))
            {
                if (source.Protocol != ProtocolKind.ModbusRtu || first.Source.Protocol != ProtocolKind.ModbusRtu)
                    yield return FileMistake.At(source.Line, ConfigurationCodes.PortShared, $"{name} and {first.Name} share one port, {link.Key}.", "Give each its own port; by-path names tell equal adapters apart. Only modbus-rtu slaves can share one.");
                else if ((source.Baud, source.Parity, source.StopBits) != (first.Source.Baud, first.Source.Parity, first.Source.StopBits))
                    yield return FileMistake.At(source.Line, ConfigurationCodes.LineSettingsDiffer, $"{name} and {first.Name} share {link.Key} but not its baud, parity and stop bits.", "Set all slaves of one line alike.");
            }

            foreach (var twins in link.Where(s => s.Source.Modbus is not null).GroupBy(s => s.Source.Modbus!.Slave))
                foreach (var (name, source) in twins.Skip(1))
                    yield return FileMistake.At(source.Line, ConfigurationCodes.SlaveTwice, $"{name} and {twins.First().Name} are both slave {twins.Key} on {link.Key}.", "Set different addresses in the devices, then here.");
        }
    }

    private static IEnumerable<Diagnostic> Bauds(BayConfiguration bay) => Sources(bay)
        .Where(s => !CommonBauds.Contains(s.Source.Baud))
        .Select(s => FileMistake.At(s.Source.Line, ConfigurationCodes.BaudRateUnusual, $"{s.Name}: baud = {s.Source.Baud} is no rate that adapters offer.", $"Use one of {string.Join(", ", CommonBauds)}."));

    private static IEnumerable<(string Name, SourceConfiguration Source)> Sources(BayConfiguration bay) => bay.Pads.SelectMany(p => p.Tilt is { } tilt
        ? new[] { (Name(p), p.Source), ($"{Name(p)} tilt", tilt) }
        : [(Name(p), p.Source)]);

    // A corner that could not be read is a mistake of its own.
    private static string Name(PadConfiguration pad) => Enum.IsDefined(pad.Corner) ? pad.Corner.ToString() : $"the pad of line {pad.Line}";

    private static IEnumerable<Diagnostic> Listening(BayConfiguration bay)
    {
        foreach (var port in OwnPorts(bay).Where(p => p.Port != 0).GroupBy(p => p.Port).Where(p => p.Count() > 1))
            yield return FileMistake.At(0, ConfigurationCodes.PortsEqual, $"{string.Join(" and ", port.Select(p => p.Key))} are {(port.Count() == 2 ? "both" : "all")} {port.Key}.", "Give them different ports.");
        if (!IPAddress.TryParse(bay.Listen.Address, out var address))
            yield return FileMistake.At(0, ConfigurationCodes.AddressRefused, $"listen.address = \"{bay.Listen.Address}\" is not an address.", "Use 127.0.0.1, or another address of this machine in digits.");
        else if (!IPAddress.IsLoopback(address) && !bay.Listen.OtherMachines)
            yield return FileMistake.At(0, ConfigurationCodes.AddressRefused, $"listen.address = \"{bay.Listen.Address}\" is not a loopback address.",
                "Use 127.0.0.1 or ::1. To let other machines in, without rights and TLS, which this version does not have, add other_machines = true.");
        foreach (var name in bay.Listen.Names.Where(n => Uri.CheckHostName(n) == UriHostNameType.Unknown))
            yield return FileMistake.At(0, ConfigurationCodes.HostNameUnusable, $"\"{name}\" in listen.names is not the name of a machine.", "Write names with commas between, without port and http://.");
    }

    // The port of another broker is that broker's own.
    private static IEnumerable<(string Key, int Port)> OwnPorts(BayConfiguration bay) =>
    [
        ("listen.page_port", bay.Listen.PagePort), ("listen.grpc_port", bay.Listen.GrpcPort),
        .. bay.Mqtt.Broker == BrokerKind.Embedded ? [("mqtt.port", bay.Mqtt.Port)] : Array.Empty<(string, int)>(),
    ];

    private static IEnumerable<(PadConfiguration Pad, PadConfiguration First, string Key)> Repeated(BayConfiguration bay, Func<PadConfiguration, string?> keyOf)
    {
        var seen = new Dictionary<string, PadConfiguration>(StringComparer.Ordinal);
        foreach (var pad in bay.Pads)
        {
            if (keyOf(pad) is { } key && !seen.TryAdd(key, pad))
                yield return (pad, seen[key], key);
        }
    }

    [GeneratedRegex("^[A-Za-z0-9_-]{1,32}$")]
    private static partial Regex NamePattern();
}
