[assembly: AssemblyFixture(typeof(Shared.MachineTime))]

namespace Shared;

/// <summary>
/// Test processes of one checkout run beside each other, but what judges times has the machine to itself: one file, held by all
/// together or by one alone. The system lets go of it when a process ends, however it ends.
/// </summary>
public sealed class MachineTime : IDisposable
{
    private const int PollMs = 100;

    private FileStream _held = Take(FileAccess.Read, FileShare.Read);

    /// <summary>From now on alone: waits until every other test process is through with what it does beside others.</summary>
    public void Alone()
    {
        _held.Dispose();
        _held = Take(FileAccess.ReadWrite, FileShare.None);
    }

    public void Dispose() => _held.Dispose();

    // Without a limit: the others have theirs, and whoever ends lets go.
    private static FileStream Take(FileAccess access, FileShare share)
    {
        while (true)
        {
            try
            {
                return new FileStream(RepositoryRoot.File("artifacts", "tests.lock"), FileMode.OpenOrCreate, access, share);
            }
            catch (IOException)
            {
                Thread.Sleep(PollMs);
            }
        }
    }
}
