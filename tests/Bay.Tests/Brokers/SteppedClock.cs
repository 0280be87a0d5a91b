using Shared.Rig;

namespace Bay.Tests.Brokers;

/// <summary>A wall clock for one process that can be stepped, by Debian's faketime library; its monotonic clock runs on.</summary>
internal sealed class SteppedClock : IDisposable
{
    private static readonly string[] Places = ["/usr/lib/x86_64-linux-gnu/faketime", "/usr/lib/aarch64-linux-gnu/faketime", "/usr/lib/faketime"];
    private readonly string _file = Path.GetTempFileName();

    public SteppedClock() => Step(TimeSpan.Zero);

    /// <summary>What a process is started through to go by this clock.</summary>
    public IReadOnlyList<string> Through =>
    [
        "env", $"LD_PRELOAD={Places.Select(p => Path.Combine(p, "libfaketimeMT.so.1")).First(File.Exists)}", $"FAKETIME_TIMESTAMP_FILE={_file}", "FAKETIME_CACHE_DURATION=1",
        // The fix is for older C libraries; on later ones it makes waits by the monotonic clock end at once, and the runtime waits again and again.
        "FAKETIME_DONT_FAKE_MONOTONIC=1", "FAKETIME_FORCE_MONOTONIC_FIX=0",
    ];

    /// <summary>Skips where there is none.</summary>
    public static void Need() => InstalledProgram.Need("faketime");

    /// <summary>From now on so far from the true time.</summary>
    public void Step(TimeSpan offset)
    {
        // In one piece: the process may look at any instant.
        File.WriteAllText($"{_file}.next", FormattableString.Invariant($"{offset.TotalSeconds:+0;-0}\n"));
        File.Move($"{_file}.next", _file, overwrite: true);
    }

    public void Dispose() => File.Delete(_file);
}
