using System.ComponentModel;
using System.Runtime.InteropServices;
using System.Runtime.Versioning;
using Microsoft.Win32.SafeHandles;

namespace ScaleLink.Probing.Ports;

/// <summary>The calls of Linux that a serial port takes. Source of numbers and structures: the kernel's asm-generic headers, which x86, ARM and RISC-V share.</summary>
[SupportedOSPlatform("linux")]
internal static unsafe partial class Terminal
{
    public const short CanRead = 0x1, CanWrite = 0x4;

    private const int ReadWrite = 0x2, NoControl = 0x100, NonBlocking = 0x800, CloseOnExec = 0x80000;
    private const int Interrupted = 4, WouldBlock = 11;
    private const nuint GetSettings = 0x802C542A, SetSettings = 0x402C542B, Exclusive = 0x540C, Flush = 0x540B, ClearLines = 0x5417;
    private const int RequestToSend = 0x4;

    /// <summary>Opens a port for one holder alone; what it received before is thrown away.</summary>
    /// <exception cref="Win32Exception">The system refused; its error number is the code.</exception>
    public static SafeFileHandle Open(string path)
    {
        var port = OpenFile(path, ReadWrite | NoControl | NonBlocking | CloseOnExec);
        if (port.IsInvalid)
            throw new Win32Exception(Marshal.GetLastPInvokeError());
        return port;
    }

    /// <summary>Sets how characters are sent and gives what the driver made of it.</summary>
    /// <exception cref="Win32Exception">The system refused, as for a file that is no terminal.</exception>
    public static TerminalSettings Set(SafeFileHandle port, TerminalSettings settings)
    {
        Check(Control(port, SetSettings, &settings));
        Check(Control(port, Exclusive, (nint)0));
        Check(Control(port, Flush, (nint)0));
        // An adapter may take this line for "send" and keep a bus from everybody else. A pseudo-terminal has no lines to clear.
        var lines = RequestToSend;
        _ = Control(port, ClearLines, &lines);
        Check(Control(port, GetSettings, &settings));
        return settings;
    }

    /// <summary>Waits until one of the two is ready: the port for what is asked, or the bell to be read.</summary>
    /// <param name="port">The port.</param>
    /// <param name="events">What to wait for.</param>
    /// <param name="bell">Rung by whoever wants the wait to end.</param>
    /// <param name="milliseconds">How long at most; negative: for ever.</param>
    /// <returns>Whether the port is ready, hung up included; false: the bell rang, or the time is over.</returns>
    public static bool Wait(SafeFileHandle port, short events, SafeFileHandle bell, int milliseconds)
    {
        var entries = stackalloc PollEntry[2] { new((int)port.DangerousGetHandle(), events), new((int)bell.DangerousGetHandle(), CanRead) };
        while (PollFiles(entries, 2, milliseconds) < 0)
        {
            if (Marshal.GetLastPInvokeError() != Interrupted)
                throw new Win32Exception(Marshal.GetLastPInvokeError());
        }

        return entries[1].Returned == 0 && entries[0].Returned != 0;
    }

    /// <summary>Bytes that are there: their number, 0 at a hang-up, nothing when there are none after all.</summary>
    /// <exception cref="Win32Exception">The device is gone.</exception>
    public static int? Read(SafeFileHandle port, Span<byte> bytes)
    {
        fixed (byte* start = bytes)
            return Done(ReadFile(port, start, (nuint)bytes.Length));
    }

    /// <summary>How many bytes were taken; nothing when there is no room now.</summary>
    /// <exception cref="Win32Exception">The device is gone.</exception>
    public static int? Write(SafeFileHandle port, ReadOnlySpan<byte> bytes)
    {
        fixed (byte* start = bytes)
            return Done(WriteFile(port, start, (nuint)bytes.Length));
    }

    /// <summary>Something that can be waited for beside a port.</summary>
    public static SafeFileHandle NewBell()
    {
        var bell = EventFile(0, CloseOnExec | NonBlocking);
        return bell.IsInvalid ? throw new Win32Exception(Marshal.GetLastPInvokeError()) : bell;
    }

    /// <summary>Ends every wait on this bell, now and later.</summary>
    public static void Ring(SafeFileHandle bell)
    {
        var once = 1L;
        _ = WriteFile(bell, (byte*)&once, sizeof(long));
    }

    private static int? Done(nint result) => result >= 0 ? (int)result
        : Marshal.GetLastPInvokeError() is WouldBlock or Interrupted ? null
        : throw new Win32Exception(Marshal.GetLastPInvokeError());

    private static void Check(int result)
    {
        if (result < 0)
            throw new Win32Exception(Marshal.GetLastPInvokeError());
    }

    [StructLayout(LayoutKind.Sequential)]
    private readonly struct PollEntry(int file, short events)
    {
        public readonly int File = file;
        public readonly short Events = events;
        public readonly short Returned;
    }

    [LibraryImport("libc", EntryPoint = "open", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    private static partial SafeFileHandle OpenFile(string path, int flags);

    [LibraryImport("libc", EntryPoint = "ioctl", SetLastError = true)]
    private static partial int Control(SafeFileHandle file, nuint request, TerminalSettings* settings);

    [LibraryImport("libc", EntryPoint = "ioctl", SetLastError = true)]
    private static partial int Control(SafeFileHandle file, nuint request, int* argument);

    [LibraryImport("libc", EntryPoint = "ioctl", SetLastError = true)]
    private static partial int Control(SafeFileHandle file, nuint request, nint argument);

    [LibraryImport("libc", EntryPoint = "poll", SetLastError = true)]
    private static partial int PollFiles(PollEntry* entries, nuint count, int milliseconds);

    [LibraryImport("libc", EntryPoint = "read", SetLastError = true)]
    private static partial nint ReadFile(SafeFileHandle file, byte* bytes, nuint count);

    [LibraryImport("libc", EntryPoint = "write", SetLastError = true)]
    private static partial nint WriteFile(SafeFileHandle file, byte* bytes, nuint count);

    [LibraryImport("libc", EntryPoint = "eventfd", SetLastError = true)]
    private static partial SafeFileHandle EventFile(uint count, int flags);
}
