namespace ScaleLink.Probing.Ports;

/// <summary>A serial port as it was asked for, and the device node behind that name.</summary>
internal sealed record SerialPortName(string Asked, string Node)
{
    /// <summary>The kernel's name of it, such as ttyUSB0.</summary>
    public string Kernel => Path.GetFileName(Node);
}

/// <summary>The serial ports of a machine.</summary>
internal static class SerialPorts
{
    /// <summary>The port of that name.</summary>
    public static SerialPortName Of(string name) => new(name, SystemTree.RealPath(name));

    /// <summary>Every USB adapter that is plugged in, by its stable name where it has one.</summary>
    public static IReadOnlyList<SerialPortName> Adapters(SystemTree tree)
    {
        var named = Names(tree, "by-path");
        var plain = Entries(tree.Dev).Where(p => Path.GetFileName(p) is var n && (n.StartsWith("ttyUSB", StringComparison.Ordinal) || n.StartsWith("ttyACM", StringComparison.Ordinal))).Select(Of);
        return [.. named.Concat(plain).DistinctBy(p => p.Node)];
    }

    /// <summary>The names in one folder of stable names: by-path or by-id.</summary>
    public static IReadOnlyList<SerialPortName> Names(SystemTree tree, string folder) => [.. Entries(Path.Combine(tree.Dev, "serial", folder)).Select(Of)];

    /// <summary>A name that stays with the socket, where the system keeps one; otherwise the name itself.</summary>
    public static string StableName(SystemTree tree, string name)
    {
        var node = SystemTree.RealPath(name);
        return Names(tree, "by-path").FirstOrDefault(p => p.Node == node)?.Asked ?? name;
    }

    private static IEnumerable<string> Entries(string folder) =>
        Directory.Exists(folder) ? Directory.EnumerateFileSystemEntries(folder).Order(StringComparer.Ordinal) : [];
}
