using System.Reflection;

[assembly: AssemblyFixture(typeof(Shared.MachineTime))]

namespace Shared;

/// <summary>
/// Test processes of one checkout, however many are started, share the machine: two at a time are loud, those on bays first since they take longest. What
/// judges times runs when all that is loud is over: a few bays, which mostly sleep. What only computes runs at any time, on what the others leave. Files say
/// who is where; the system lets go of them when a process ends, however it ends.
/// </summary>
public sealed class MachineTime : IDisposable
{
    private const int PollMs = 100, LoudAtATime = 2;
    private const string LoudFile = "tests-loud.lock", QuietFile = "tests-quiet.lock", EagerFile = "tests-eager.lock";

    private static readonly TimeSpan OthersBegin = TimeSpan.FromSeconds(5);

    private readonly List<FileStream> _held = [];

    public MachineTime()
    {
        if (Kind == "computes")
        {
            Courtesy.TakeWhatIsLeft();
            return;
        }

        // All are started at the same moment; whoever is quiet would be in before anybody is loud.
        if (IsQuietThroughout)
            Thread.Sleep(OthersBegin);
        else if (!HasBays)
            Courtesy.LetOthersGoFirst();
        using var eager = HasBays && !IsQuietThroughout ? Wait(() => Try(EagerFile, FileAccess.Read, FileShare.Read)) : null;
        _held.Add(Wait(TakePlace));
        _held.Add(Wait(() => Enter(LoudFile, unless: QuietFile)));
        if (IsQuietThroughout)
            Quiet();
    }

    // As its project says: it only computes, or is quiet throughout; most are neither.
    private static string? Kind { get; } = typeof(MachineTime).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().FirstOrDefault(a => a.Key == "MachineTime")?.Value;

    private static bool IsQuietThroughout => Kind == "quiet";

    private static bool HasBays { get; } = typeof(MachineTime).Assembly.GetTypes().Any(t => t.GetCustomAttributes(typeof(TraitAttribute), inherit: false).Any(a => ((TraitAttribute)a) is { Name: "needs", Value: "bay" }));

    /// <summary>From now on quiet: waits until no test process is loud any more; whoever wants to be loud later waits until this one has ended.</summary>
    public void Quiet()
    {
        Dispose();
        _held.Add(Wait(() => Enter(QuietFile, unless: LoudFile)));
    }

    public void Dispose()
    {
        _held.ForEach(h => h.Dispose());
        _held.Clear();
    }

    // Whoever only computes leaves a place to those on bays that wait for one.
    private static FileStream? TakePlace()
    {
        if (!HasBays || IsQuietThroughout)
        {
            using var nobodyEager = Try(EagerFile, FileAccess.ReadWrite, FileShare.None);
            if (nobodyEager is null)
                return null;
        }

        return Enumerable.Range(1, LoudAtATime).Select(place => Try($"tests-place-{place}.lock", FileAccess.ReadWrite, FileShare.None)).FirstOrDefault(held => held is not null);
    }

    // Being there first and looking second leaves no moment in which both sides get in.
    private static FileStream? Enter(string file, string unless)
    {
        var held = Try(file, FileAccess.Read, FileShare.Read);
        using var other = Try(unless, FileAccess.ReadWrite, FileShare.None);
        if (held is not null && other is not null)
            return held;
        held?.Dispose();
        return null;
    }

    // Without a limit: the others have theirs, and whoever ends lets go. Not all at the same moment, or two that look for each other would never get in.
    private static FileStream Wait(Func<FileStream?> take)
    {
        while (true)
        {
            if (take() is { } held)
                return held;
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
