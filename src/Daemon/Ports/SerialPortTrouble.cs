using System.IO.Ports;
using System.Runtime.InteropServices;
using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Ports;

/// <summary>Finds why a port cannot be used. The serial library says "access denied" whatever the cause, so the system is asked.</summary>
internal static partial class SerialPortTrouble
{
    private const string MemoryDevices = "/sys/class/mem";
    private const int ReadWriteNoControlNonBlocking = 0x2 | 0x100 | 0x800;
    private const int ReadAndWrite = 4 | 2;
    private const int NoSuchFile = 2, NoSuchDevice = 6, NotPermitted = 13, InUse = 16, NotATerminal = 25;

    /// <summary>What can be seen without opening: opening would reset boards that take a handshake line as their reset.</summary>
    public static Diagnostic? BeforeOpening(LinkAddress address)
    {
        if (address is not SerialAddress serial || OperatingSystem.IsWindows())
            return null;
        if (Directory.Exists(serial.Port) || IsMemory(serial.Port))
            return LinkDiagnostics.NotSerial(serial.Port);
        if (!File.Exists(serial.Port))
            return LinkDiagnostics.Missing(serial.Port, KnownPorts());
        return CanAccess(serial.Port, ReadAndWrite) == 0 ? null : LinkDiagnostics.Forbidden(serial.Port);
    }

    /// <summary>The cause of a failure that has just happened; <paramref name="said"/> is the library's own message.</summary>
    public static Diagnostic WhyNotOpened(SerialAddress address, string said)
    {
        if (BeforeOpening(address) is { } visible)
            return visible;
        if (!OperatingSystem.IsLinux())
            return LinkDiagnostics.Other(address.Port, said);
        var descriptor = OpenFile(address.Port, ReadWriteNoControlNonBlocking);
        var error = descriptor < 0 ? Marshal.GetLastPInvokeError() : IsTerminal(descriptor) == 1 ? 0 : NotATerminal;
        if (descriptor >= 0)
            _ = CloseFile(descriptor);
        return error switch
        {
            NoSuchFile or NoSuchDevice => LinkDiagnostics.Missing(address.Port, KnownPorts()),
            NotPermitted => LinkDiagnostics.Forbidden(address.Port),
            InUse => LinkDiagnostics.Busy(address.Port, PortHolder.Of(address.Port)),
            NotATerminal => LinkDiagnostics.NotSerial(address.Port),
            _ => LinkDiagnostics.Other(address.Port, said),
        };
    }

    // /dev/null and its like, which can be told without opening them.
    private static bool IsMemory(string port) =>
        LinkAddress.NodeOf(port) is var node && Path.GetDirectoryName(node) == "/dev" && Directory.Exists(Path.Combine(MemoryDevices, Path.GetFileName(node)));

    private static string KnownPorts() => string.Join(", ", SerialPort.GetPortNames().Order().Take(8));

    [LibraryImport("libc", EntryPoint = "open", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    private static partial int OpenFile(string path, int flags);

    [LibraryImport("libc", EntryPoint = "close")]
    private static partial int CloseFile(int descriptor);

    [LibraryImport("libc", EntryPoint = "isatty")]
    private static partial int IsTerminal(int descriptor);

    [LibraryImport("libc", EntryPoint = "access", StringMarshalling = StringMarshalling.Utf8)]
    private static partial int CanAccess(string path, int mode);
}
