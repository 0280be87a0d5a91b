using System.Globalization;
using System.Text.Json;
using ScaleLink.Measure;

namespace ScaleLink.Daemon.Runtime;

/// <summary>Whoever holds a lock, as it is told to whoever comes second.</summary>
/// <param name="Process">Its number.</param>
/// <param name="Machine">Name of the machine it runs on.</param>
/// <param name="Since">UTC.</param>
/// <param name="Bay">Name of its bay; absent in locks of older versions.</param>
internal sealed record LockHolder(int Process, string Machine, DateTimeOffset Since, string? Bay = null)
{
    /// <summary>This process.</summary>
    public static LockHolder Me(DateTimeOffset now, string? bay) => new(Environment.ProcessId, Environment.MachineName, now, bay);

    /// <inheritdoc/>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"process {Process} on {PlainText.Clean(Machine, 64)}{(Bay is { } bay ? $", bay {PlainText.Clean(bay, 64)}" : "")}, since {LocalTime.Minute(Since)}");
}

/// <summary>Somebody else holds a lock.</summary>
internal sealed class HeldException(string by, IOException inner) : IOException(by, inner)
{
    /// <summary>Who, in words.</summary>
    public string By { get; } = by;
}

/// <summary>
/// Held by one process at a time. The lock is the operating system's and ends with the process, however that ends; the name beside it is only what
/// is told.
/// </summary>
internal sealed class HolderLock : IDisposable
{
    private readonly FileStream _held;

    private HolderLock(FileStream held) => _held = held;

    /// <summary>Takes the lock.</summary>
    /// <param name="path">Of the lock, without ending: <c>.lock</c> and <c>.holder</c> lie there.</param>
    /// <param name="me">For whoever comes second.</param>
    /// <exception cref="HeldException">Somebody else holds it.</exception>
    /// <exception cref="IOException">The folder is missing or full.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder may not be written.</exception>
    public static HolderLock Take(string path, LockHolder me)
    {
        var name = path + ".holder";
        FileStream held;
        try
        {
            held = new FileStream(path + ".lock", FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (IOException e) when (IsHeld(e))
        {
            throw new HeldException(Told(name), e);
        }

        try
        {
            Tell(name, me);
            return new HolderLock(held);
        }
        catch
        {
            held.Dispose();
            throw;
        }
    }

    /// <summary>Gives it back. The files stay: one that is deleted could be locked by two.</summary>
    public void Dispose() => _held.Dispose();

    // Replaced as a whole: nobody reads half a name, and a link that somebody else has put there is not followed.
    private static void Tell(string name, LockHolder me)
    {
        var fresh = name + ".new";
        File.Delete(fresh);
        using (var file = new FileStream(fresh, FileMode.CreateNew, FileAccess.Write))
            JsonSerializer.Serialize(file, me);
        File.Move(fresh, name, overwrite: true);
    }

    // A full or broken disk is nobody else. Windows: ERROR_SHARING_VIOLATION; elsewhere EWOULDBLOCK, 11 on Linux and 35 on macOS.
    private static bool IsHeld(IOException failure) => OperatingSystem.IsWindows() ? (failure.HResult & 0xFFFF) == 32 : failure.HResult is 11 or 35;

    private static string Told(string name)
    {
        try
        {
            return JsonSerializer.Deserialize<LockHolder>(File.ReadAllBytes(name))?.ToString() ?? "it has not said which";
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or JsonException)
        {
            return "it has not said which";
        }
    }
}
