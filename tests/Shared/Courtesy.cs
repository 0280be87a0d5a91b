using System.Runtime.InteropServices;

namespace Shared;

/// <summary>Tests that only compute let those on bays go first, which live by real time: their threads get what is left of the processors.</summary>
internal static partial class Courtesy
{
    // As the command nice does without a number.
    private const int Niceness = 10, OfAThread = 0;

    /// <summary>Every thread of this process, and so each that they will start; elsewhere than on Linux nothing.</summary>
    public static void LetOthersGoFirst()
    {
        if (!OperatingSystem.IsLinux())
            return;
        foreach (var thread in Directory.GetDirectories("/proc/self/task"))
            _ = SetPriority(OfAThread, uint.Parse(Path.GetFileName(thread), System.Globalization.CultureInfo.InvariantCulture), Niceness);
    }

    [LibraryImport("libc", EntryPoint = "setpriority")]
    private static partial int SetPriority(int which, uint id, int niceness);
}
