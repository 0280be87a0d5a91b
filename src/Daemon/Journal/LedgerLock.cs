using System.Globalization;
using System.Text.Json;
using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Journal;

/// <summary>
/// Held as long as a daemon works on a ledger: a second one on the same ledger is turned away and told who the first is. The lock is the operating
/// system's and ends with the process, however that ends; the name beside it is only what is told.
/// </summary>
public sealed class LedgerLock : IDisposable
{
    private readonly FileStream _held;

    private LedgerLock(FileStream held) => _held = held;

    /// <summary>Takes the lock.</summary>
    /// <param name="ledger">Path of the ledger.</param>
    /// <param name="now">UTC, for whoever comes second.</param>
    /// <exception cref="StartException">SL-364: another daemon holds it.</exception>
    /// <exception cref="IOException">The folder is missing, full or not writable.</exception>
    public static LedgerLock Take(string ledger, DateTimeOffset now)
    {
        var (path, name) = (ledger + ".lock", ledger + ".holder");
        FileStream held;
        try
        {
            held = new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (IOException e) when (IsHeld(e))
        {
            throw new StartException(LedgerCodes.LedgerHeld, $"Another daemon works on the ledger {ledger}: {Told(name)}.",
                "End that one first, or give this bay a ledger of its own (ledger.path in the bay file).", e);
        }

        try
        {
            File.WriteAllBytes(name, JsonSerializer.SerializeToUtf8Bytes(new Holder(Environment.ProcessId, Environment.MachineName, now)));
            return new LedgerLock(held);
        }
        catch
        {
            held.Dispose();
            throw;
        }
    }

    /// <summary>Gives it back. The files stay: one that is deleted could be locked by two.</summary>
    public void Dispose() => _held.Dispose();

    // A full or broken disk is not another daemon. Windows: ERROR_SHARING_VIOLATION; elsewhere EWOULDBLOCK, 11 on Linux and 35 on macOS.
    private static bool IsHeld(IOException failure) => OperatingSystem.IsWindows() ? (failure.HResult & 0xFFFF) == 32 : failure.HResult is 11 or 35;

    private static string Told(string name)
    {
        try
        {
            return JsonSerializer.Deserialize<Holder>(File.ReadAllBytes(name)) is { } holder
                ? string.Create(CultureInfo.InvariantCulture, $"process {holder.Process} on {PeerText.Clean(holder.Machine, 64)}, since {holder.Since.UtcDateTime:yyyy-MM-dd HH:mm} UTC")
                : "it has not said which";
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or JsonException)
        {
            return "it has not said which";
        }
    }

    private sealed record Holder(int Process, string Machine, DateTimeOffset Since);
}
