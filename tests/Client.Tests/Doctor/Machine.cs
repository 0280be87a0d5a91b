using ScaleLink.Probing.Ports;

namespace Client.Tests.Doctor;

/// <summary>A machine's /dev, /sys, /proc, /etc and /run, laid out as Linux does for USB serial adapters: no real part can be plugged into a test.</summary>
internal sealed class Machine : IDisposable
{
    private readonly DirectoryInfo _root = Directory.CreateTempSubdirectory("machine-");
    private int _adapters;

    public Machine()
    {
        Tree = new SystemTree { Dev = Folder("dev"), Sys = Folder("sys"), Proc = Folder("proc"), Etc = Folder("etc"), Run = Folder("run") };
        File.WriteAllText(Path.Combine(Tree.Etc, "group"), "root:x:0:\ndialout:x:20:crew\n");
    }

    public SystemTree Tree { get; }

    /// <summary>Plugs an adapter in; gives its plain, by-path and by-id names.</summary>
    public (string Plain, string ByPath, string ById) Plug(string? serial = "A1", int? latencyMs = 16, params string[] properties)
    {
        var number = _adapters++;
        var (kernel, socket) = ($"ttyUSB{number}", $"1-{number + 1}");
        var usb = Folder($"sys/devices/pci0/usb1/{socket}");
        var port = Folder($"sys/devices/pci0/usb1/{socket}/{socket}:1.0/{kernel}");
        var tty = Folder($"sys/devices/pci0/usb1/{socket}/{socket}:1.0/{kernel}/tty/{kernel}");
        File.WriteAllText(Path.Combine(usb, "idVendor"), "0403\n");
        File.WriteAllText(Path.Combine(usb, "idProduct"), "6001\n");
        if (serial is not null)
            File.WriteAllText(Path.Combine(usb, "serial"), serial + "\n");
        if (latencyMs is { } ms)
            File.WriteAllText(Path.Combine(port, "latency_timer"), $"{ms}\n");
        File.WriteAllText(Path.Combine(tty, "dev"), $"188:{number}\n");
        File.CreateSymbolicLink(Path.Combine(tty, "device"), $"../../../{kernel}");
        File.CreateSymbolicLink(Path.Combine(Folder("sys/class/tty"), kernel), $"../../devices/pci0/usb1/{socket}/{socket}:1.0/{kernel}/tty/{kernel}");
        File.WriteAllLines(Path.Combine(Folder("run/udev/data"), $"c188:{number}"), ["S:serial/by-path/x", .. properties.Select(p => $"E:{p}")]);

        var plain = Path.Combine(Tree.Dev, kernel);
        File.WriteAllText(plain, "");
        return (plain, Name("by-path", $"usb-0:{socket}", kernel), Name("by-id", $"usb-0403_6001_{serial}", kernel));
    }

    /// <summary>Starts a program that has a file open, or none.</summary>
    public void Start(int id, string name, string? opened = null, string commandLine = "")
    {
        var folder = Folder($"proc/{id}");
        File.WriteAllText(Path.Combine(folder, "comm"), name + "\n");
        File.WriteAllText(Path.Combine(folder, "cmdline"), commandLine.Replace(' ', '\0'));
        var descriptors = Folder($"proc/{id}/fd");
        if (opened is not null)
            File.CreateSymbolicLink(Path.Combine(descriptors, "7"), opened);
    }

    public void Dispose() => _root.Delete(recursive: true);

    private string Folder(string path) => Directory.CreateDirectory(Path.Combine(_root.FullName, path)).FullName;

    private string Name(string folder, string name, string kernel)
    {
        var link = Path.Combine(Folder($"dev/serial/{folder}"), name);
        // Adapters that call themselves the same fight for one name: the last one has it.
        File.Delete(link);
        File.CreateSymbolicLink(link, $"../../{kernel}");
        return link;
    }
}
