[assembly: AssemblyFixture(typeof(Shared.MachineTime))]

namespace Shared;

/// <summary>
/// Test processes of one checkout run beside each other, and what judges times runs when all that is loud is over: one bay a process, which mostly
/// sleeps. Two files say who is where, held together by all who are; the system lets go of them when a process ends, however it ends.
/// </summary>
public sealed class MachineTime : IDisposable
{
    private const int PollMs = 100;
    private const string LoudFile = "tests-loud.lock", QuietFile = "tests-quiet.lock";

    private FileStream? _held;

    public MachineTime()
    {
        if (!HasBays)
            Courtesy.LetOthersGoFirst();
        _held = Enter(LoudFile, unless: QuietFile);
    }

    private static bool HasBays => typeof(MachineTime).Assembly.GetTypes().Any(t => t.GetCustomAttributes(typeof(TraitAttribute), inherit: false).Any(a => ((TraitAttribute)a) is { Name: "needs", Value: "bay" }));

    /// <summary>From now on quiet: waits until no test process is loud any more; whoever starts later waits until this one has ended.</summary>
    public void Quiet()
    {
        _held?.Dispose();
        _held = null;
        _held = Enter(QuietFile, unless: LoudFile);
    }

    public void Dispose() => _held?.Dispose();

    // Without a limit: the others have theirs, and whoever ends lets go. Being there first and looking second leaves no moment in which both sides get in.
    private static FileStream Enter(string file, string unless)
    {
        while (true)
        {
            var held = Try(file, FileAccess.Read, FileShare.Read);
            using (var other = Try(unless, FileAccess.ReadWrite, FileShare.None))
            {
                if (held is not null && other is not null)
                    return held;
            }

            held?.Dispose();
            // Not all at the same moment, or two that look for each other would never get in.
            Thread.Sleep(PollMs + Random.Shared.Next(PollMs));
        }
    }

    private static FileStream? Try(string file, FileAccess access, FileShare share)
    {
        try
        {
            return new FileStream(RepositoryRoot.File("artifacts", file), FileMode.OpenOrCreate, access, share);
        }
        catch (IOException)
        {
            return null;
        }
    }
}
