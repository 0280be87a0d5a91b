using System.Globalization;

namespace ScaleLink.Daemon.Ports;

/// <summary>Finds which other program has a port open, among those that this user may look into.</summary>
internal static class PortHolder
{
    private const string Processes = "/proc";

    /// <summary>The program in words; nothing when it cannot be known.</summary>
    public static string? Of(string port)
    {
        if (!OperatingSystem.IsLinux())
            return null;
        var node = LinkAddress.NodeOf(port);
        foreach (var process in Directory.EnumerateDirectories(Processes))
            if (int.TryParse(Path.GetFileName(process), NumberStyles.None, CultureInfo.InvariantCulture, out var id) && id != Environment.ProcessId && Holds(process, node))
                return $"process {id}{Name(process)}";
        return null;
    }

    private static bool Holds(string process, string node)
    {
        try
        {
            return Directory.EnumerateFiles(Path.Combine(process, "fd")).Any(f => new FileInfo(f).LinkTarget == node);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // It has ended meanwhile, or belongs to somebody else.
            return false;
        }
    }

    private static string Name(string process)
    {
        try
        {
            return $" ({PlainText.Clean(File.ReadAllText(Path.Combine(process, "comm")), 32)})";
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return "";
        }
    }
}
