using ScaleLink.Probing.Ports;

namespace ScaleLink.Client.Doctor;

/// <summary>What the system knows of the USB adapter behind a serial port.</summary>
internal sealed record UsbAdapter(string Kernel, string Vendor, string Product, string? SerialNumber, string? Number)
{
    private const int MostLevels = 8;

    /// <summary>Maker, kind and serial number: what a by-id name is made of.</summary>
    public string Identity => $"{Vendor}:{Product} {SerialNumber ?? "without serial number"}";

    /// <summary>The adapter; nothing for a port that hangs on no USB device.</summary>
    public static UsbAdapter? Of(SystemTree tree, string kernel)
    {
        var tty = Path.Combine(tree.Sys, "class", "tty", kernel);
        var folder = SystemTree.RealPath(Path.Combine(tty, "device"));
        for (var level = 0; level < MostLevels && folder is { Length: > 1 }; level++, folder = Path.GetDirectoryName(folder)!)
            if (SystemTree.Line(Path.Combine(folder, "idVendor")) is { } vendor)
                return new UsbAdapter(kernel, vendor, SystemTree.Line(Path.Combine(folder, "idProduct")) ?? "?", SystemTree.Line(Path.Combine(folder, "serial")), SystemTree.Line(Path.Combine(tty, "dev")));
        return null;
    }

    /// <summary>What the device rules have said of the port, as KEY=VALUE.</summary>
    public IEnumerable<string> Properties(SystemTree tree) =>
        Number is null ? [] : SystemTree.Lines(Path.Combine(tree.Run, "udev", "data", $"c{Number}")).Where(l => l.StartsWith("E:", StringComparison.Ordinal)).Select(l => l[2..]);
}
