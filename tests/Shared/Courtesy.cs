using System.Runtime.InteropServices;

namespace Shared;

/// <summary>Tests that only compute let those on bays go first, which live by real time: their threads get what is left of the processors.</summary>
internal static partial class Courtesy
{
    // As the command nice does without a number, and as far as it goes.
    private const int Nice = 10, Nicest = 19, OfAThread = 0;

    /// <summary>Behind others, but not so far that its own waits run out.</summary>
    public static void LetOthersGoFirst() => BeNice(Nice);

    /// <summary>Behind everybody.</summary>
    public static void TakeWhatIsLeft() => BeNice(Nicest);

    // Every thread of this process, and so each that they will start; elsewhere than on Linux nothing.
    private static void BeNice(int niceness)
    {
        if (!OperatingSystem.IsLinux())
            return;
        foreach (var thread in Directory.GetDirectories("/proc/self/task"))
            _ = SetPriority(OfAThread, uint.Parse(Path.GetFileName(thread), System.Globalization.CultureInfo.InvariantCulture), niceness);
    }

    [LibraryImport("libc", EntryPoint = "setpriority")]
    private static partial int SetPriority(int which, uint id, int niceness);
}
