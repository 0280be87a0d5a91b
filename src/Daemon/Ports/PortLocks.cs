using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Ports;

/// <summary>
/// A lock for each serial port, where every daemon of the machine finds it: two that read one port would each get half of its bytes, and the
/// system's own lock does not bind the superuser and names nobody.
/// </summary>
/// <param name="bay">Name of the bay, for whoever comes second; nothing: it has none yet.</param>
/// <param name="time">The clock.</param>
/// <param name="folder">Where the locks lie.</param>
internal sealed class PortLocks(string? bay, TimeProvider time, string folder)
{
    private const string SystemFolder = "/run/lock";

    /// <summary>Locks in the folder of this user's running programs, that of the machine, or that of passing files.</summary>
    public PortLocks(string? bay, TimeProvider time)
        : this(bay, time, Folder())
    {
    }

    /// <summary>Takes the lock of a port; nothing when there can be none.</summary>
    /// <exception cref="LinkEndedException">SL-108: another daemon holds it.</exception>
    public IDisposable? Take(string port)
    {
        try
        {
            return HolderLock.Take(Path.Combine(folder, NameOf(LinkAddress.NodeOf(port))), LockHolder.Me(time.GetUtcNow(), bay));
        }
        catch (HeldException held)
        {
            throw new LinkEndedException(LinkDiagnostics.Taken(port, held.By), held);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // A folder that is full or belongs to somebody else must not keep a pad from being read.
            return null;
        }
    }

    private static string NameOf(string node) => "scalelink-port" + string.Concat(node.Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-'));

    private static string Folder() => Environment.GetEnvironmentVariable("XDG_RUNTIME_DIR") is { Length: > 0 } own && Directory.Exists(own) ? own
        : Directory.Exists(SystemFolder) ? SystemFolder
        : Path.GetTempPath();
}
