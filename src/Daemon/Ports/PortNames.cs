namespace ScaleLink.Daemon.Ports;

/// <summary>
/// The names that Linux keeps for serial adapters. A plain name such as ttyUSB0 goes by the order of plugging in, so pads could change corners
/// over night; by-path stays with the socket; by-id stays with the adapter, but only adapters with serial numbers of their own have one each.
/// </summary>
internal sealed class PortNames
{
    private const string Folder = "/dev/serial";

    private readonly IReadOnlyList<(string Name, string Node)> _byPath;
    private readonly IReadOnlyList<(string Name, string Node)> _byId;
    private readonly string _folder;

    /// <summary>Reads the names that are there now; <paramref name="folder"/> holds by-path and by-id.</summary>
    public PortNames(string folder = Folder)
    {
        _folder = folder;
        _byPath = Read(Path.Combine(folder, "by-path"));
        _byId = Read(Path.Combine(folder, "by-id"));
    }

    /// <summary>Why the name may come to mean another adapter, and which one to use; nothing when it is sound.</summary>
    public Diagnostic? Uncertainty(string port)
    {
        var stable = _byPath.FirstOrDefault(p => p.Node == LinkAddress.NodeOf(port)).Name;
        if (stable is null || port.StartsWith(Path.Combine(_folder, "by-path"), StringComparison.Ordinal))
            return null;
        if (!port.StartsWith(_folder, StringComparison.Ordinal))
            return new Diagnostic(LinkCodes.NameByOrder, $"{port} goes by the order of plugging in: after a restart it may be another pad's adapter.", $"Write link = \"{stable}\", which stays with the socket.");
        // Adapters of one kind without serial numbers fight for one name: then some adapter has a path but no id.
        var nameless = _byPath.Any(p => _byId.All(i => i.Node != p.Node));
        return nameless
            ? new Diagnostic(LinkCodes.NameShared, $"{port} may not be the only adapter of that name.", $"Write link = \"{stable}\", which stays with the socket.")
            : null;
    }

    private static List<(string Name, string Node)> Read(string folder) => Directory.Exists(folder)
        ? [.. Directory.EnumerateFileSystemEntries(folder).Order(StringComparer.Ordinal).Select(name => (name, LinkAddress.NodeOf(name)))]
        : [];
}
