using System.Runtime.InteropServices;
using System.Runtime.Versioning;

namespace CarOnPads.Ports;

/// <summary>The few calls of the C library that a pseudo-terminal takes, with the constants of Linux and macOS.</summary>
[UnsupportedOSPlatform("windows")]
static unsafe partial class Posix
{
    public const int Interrupted = 4;
    public const short PollIn = 0x0001;
    public const short PollHangUp = 0x0010;

    // Larger than struct termios on every platform; nobody looks inside.
    const int TermiosRoom = 256;

    const nuint GetSettings = 0x802C542A;

    // ptsname answers in one buffer for the whole process.
    static readonly Lock s_nameGate = new();
    static readonly bool s_mac = OperatingSystem.IsMacOS();

    public static int WouldBlock => s_mac ? 35 : 11;

    // Close on exec: a child process that inherited the master would keep a pulled cable alive.
    static int Flags => s_mac ? 0x2 | 0x20000 | 0x4 | 0x1000000 : 0x2 | 0x100 | 0x800 | 0x80000;

    /// <summary>Opens a device for reading and writing, not blocking, not as controlling terminal.</summary>
    public static int Open(string path) => Check(open(path, Flags), $"open {path}");

    /// <summary>Makes the slave of this master usable and returns its path.</summary>
    public static string Unlock(int master)
    {
        Check(grantpt(master), "grantpt");
        Check(unlockpt(master), "unlockpt");
        lock (s_nameGate)
        {
            var name = ptsname(master);
            return name == 0 ? throw Failure("ptsname") : Marshal.PtrToStringUTF8(name)!;
        }
    }

    /// <summary>No echo, no line editing, eight bits, on this descriptor's terminal.</summary>
    public static void MakeRaw(int terminal)
    {
        var termios = stackalloc byte[TermiosRoom];
        Check(tcgetattr(terminal, termios), "tcgetattr");
        cfmakeraw(termios);
        Check(tcsetattr(terminal, 0, termios), "tcsetattr");
    }

    /// <summary>
    /// Rate and parity that are set on this master's slave (<c>struct termios2</c> of Linux). A pseudo-terminal forgets the flag for a parity bit and the number
    /// of data bits, and keeps those for checking parity and for an odd one, which every reader sets that wants parity.
    /// </summary>
    public static LineSetting? SettingOf(int master)
    {
        const int CheckParity = 0x10, OddParity = 0x200, Input = 0, Control = 2, Rate = 10;
        if (!OperatingSystem.IsLinux())
            return null;
        var settings = stackalloc uint[TermiosRoom / sizeof(uint)];
        if (ioctl(master, GetSettings, settings) < 0)
            return null;
        var parity = (settings[Input] & CheckParity) == 0 ? LineParity.None : (settings[Control] & OddParity) == 0 ? LineParity.Even : LineParity.Odd;
        return new LineSetting((int)settings[Rate], parity);
    }

    public static nint Write(int descriptor, ReadOnlySpan<byte> bytes)
    {
        fixed (byte* start = bytes)
            return write(descriptor, start, (nuint)bytes.Length);
    }

    public static nint Read(int descriptor, Span<byte> bytes)
    {
        fixed (byte* start = bytes)
            return read(descriptor, start, (nuint)bytes.Length);
    }

    /// <summary>Events that hold on this descriptor now, or within the time given.</summary>
    public static short Poll(int descriptor, short events, int milliseconds)
    {
        var entry = new PollEntry { Descriptor = descriptor, Events = events };
        return poll(&entry, 1, milliseconds) > 0 ? entry.Returned : (short)0;
    }

    public static void Close(int descriptor) => _ = close(descriptor);

    public static IOException Failure(string what)
    {
        var error = Marshal.GetLastPInvokeError();
        return new IOException($"{what}: {Marshal.GetPInvokeErrorMessage(error)} (errno {error})");
    }

    static int Check(int result, string what) => result < 0 ? throw Failure(what) : result;

    [StructLayout(LayoutKind.Sequential)]
    struct PollEntry
    {
        public int Descriptor;
        public short Events;
        public short Returned;
    }

    [LibraryImport("libc", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    private static partial int open(string path, int flags);

    [LibraryImport("libc", SetLastError = true)]
    private static partial int ioctl(int descriptor, nuint request, uint* settings);

    [LibraryImport("libc", SetLastError = true)]
    private static partial int grantpt(int descriptor);

    [LibraryImport("libc", SetLastError = true)]
    private static partial int unlockpt(int descriptor);

    [LibraryImport("libc", SetLastError = true)]
    private static partial nint ptsname(int descriptor);

    [LibraryImport("libc", SetLastError = true)]
    private static partial int tcgetattr(int descriptor, byte* termios);

    [LibraryImport("libc")]
    private static partial void cfmakeraw(byte* termios);

    [LibraryImport("libc", SetLastError = true)]
    private static partial int tcsetattr(int descriptor, int when, byte* termios);

    [LibraryImport("libc", SetLastError = true)]
    private static partial nint write(int descriptor, byte* bytes, nuint count);

    [LibraryImport("libc", SetLastError = true)]
    private static partial nint read(int descriptor, byte* bytes, nuint count);

    [LibraryImport("libc", SetLastError = true)]
    private static partial int poll(PollEntry* entries, nuint count, int milliseconds);

    [LibraryImport("libc", SetLastError = true)]
    private static partial int close(int descriptor);
}
