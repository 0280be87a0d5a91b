using System.ComponentModel;

namespace ScaleLink.Probing.Ports;

/// <summary>A serial port that is listened to for a while. One thread uses it.</summary>
internal abstract class ProbedPort(string name, TimeProvider time) : IDisposable
{
    private const int ReadBuffer = 65536;
    private const int WaitMs = 50;

    /// <summary>Opens it: on Linux by the system's own calls, as the daemon does, elsewhere by the serial library, which does not tell a wrong parity.</summary>
    /// <exception cref="PortException">SL-471 not there, SL-472 not permitted, SL-473 held by another program, SL-474 no serial port.</exception>
    public static ProbedPort Open(string name, int baud, CharacterFormat format, TimeProvider time)
    {
        try
        {
            return OperatingSystem.IsLinux() ? new SystemPort(name, baud, format, time) : new LibraryPort(name, baud, format, time);
        }
        catch (Exception e) when (e is Win32Exception or IOException or UnauthorizedAccessException or ArgumentException or InvalidOperationException)
        {
            throw new PortException(Why(name, e), e);
        }
    }

    /// <summary>
    /// Takes another rate and format without closing: closing and opening would reset boards that take a handshake line as their reset. What came before is
    /// thrown away.
    /// </summary>
    /// <returns>Whether the driver takes them.</returns>
    /// <exception cref="PortException">SL-475: the port went away.</exception>
    public abstract bool TrySet(int baud, CharacterFormat format);

    /// <summary>Sends bytes.</summary>
    /// <exception cref="PortException">SL-475: the port went away.</exception>
    public abstract void Write(byte[] bytes);

    /// <summary>Hands on what comes, until <paramref name="take"/> says that it is enough or the time is up.</summary>
    /// <exception cref="PortException">SL-475: the port went away.</exception>
    public void Listen(TimeSpan span, Func<byte[], bool> take, CancellationToken stop)
    {
        var (start, buffer) = (time.GetTimestamp(), new byte[ReadBuffer]);
        while (time.GetElapsedTime(start) < span && !stop.IsCancellationRequested)
            if (Read(buffer, (int)Math.Clamp((span - time.GetElapsedTime(start)).TotalMilliseconds, 1, WaitMs)) is > 0 and var read && !take(buffer[..read]))
                return;
    }

    public abstract void Dispose();

    /// <summary>What has come, or comes within that time; 0 when nothing does.</summary>
    protected abstract int Read(byte[] buffer, int milliseconds);

    protected PortException Gone(Exception? cause) => new(new Diagnostic(ProbeCodes.PortLost, $"{name} went away while it was listened to.", "Check cable, adapter and hub, then try again."), cause);

    // The serial library says "access denied" whatever the cause: the system is asked.
    private static Diagnostic Why(string name, Exception e)
    {
        if (!OperatingSystem.IsWindows() && !Path.Exists(name))
            return new Diagnostic(ProbeCodes.PortMissing, $"{name} is not there.", "Plug the adapter in; scalelink doctor lists what is wrong with adapters.");
        if (OperatingSystem.IsLinux() && !Ownership.MayOpen(name))
            return new Diagnostic(ProbeCodes.PortForbidden, $"{name} may not be opened by this user.", $"scalelink doctor {name} says which group is missed.");
        if (OperatingSystem.IsLinux() && !IsTerminal(name))
            return new Diagnostic(ProbeCodes.NotSerialPort, $"{name} is not a serial port.", "Name the adapter's device, such as /dev/serial/by-path/....");
        return new Diagnostic(ProbeCodes.PortHeld, $"{name} is held by another program: {e.Message}", "Stop the daemon, or whatever else reads there; scalelink doctor names it.");
    }

    private static bool IsTerminal(string name) => SystemTree.RealPath(name) is var node && (node.StartsWith("/dev/tty", StringComparison.Ordinal) || node.StartsWith("/dev/pts/", StringComparison.Ordinal));
}
