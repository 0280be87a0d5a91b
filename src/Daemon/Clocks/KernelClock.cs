using System.Runtime.InteropServices;

namespace ScaleLink.Daemon.Clocks;

/// <summary>What the kernel knows of the wall clock (Linux, adjtimex(2)): whoever keeps it in step says so there, whatever program it is.</summary>
internal static unsafe partial class KernelClock
{
    // struct timex is 208 bytes on every 64-bit system, and smaller elsewhere; all zero it asks and changes nothing.
    private const int Room = 256;
    private const int NotSynchronised = 5;

    /// <summary>Whether it is kept in step; unknown where the system cannot be asked.</summary>
    public static ClockTrust Ask()
    {
        if (!OperatingSystem.IsLinux())
            return ClockTrust.Unknown;
        var answer = stackalloc byte[Room];
        new Span<byte>(answer, Room).Clear();
        return Adjust(answer) switch
        {
            < 0 => ClockTrust.Unknown,
            NotSynchronised => ClockTrust.FreeRunning,
            _ => ClockTrust.Synchronised,
        };
    }

    [LibraryImport("libc", EntryPoint = "adjtimex", SetLastError = true)]
    private static partial int Adjust(byte* state);
}
