using System.Text.Json;
using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Journal;

/// <summary>The newest entry of a ledger.</summary>
/// <param name="Id">Its number.</param>
/// <param name="Hash">Its hash.</param>
internal sealed record LedgerHead(long Id, string Hash);

/// <summary>
/// Keeps the head beside the ledger. A write-ahead log whose middle is damaged ends there without a word, and everything after it is
/// gone: only somebody who knows how far the ledger went can tell.
/// </summary>
internal sealed class LedgerHeadFile(string ledgerPath)
{
    private readonly string _path = ledgerPath + ".head";

    /// <summary>The head last written; nothing when there is none, or it cannot be read.</summary>
    public LedgerHead? Read()
    {
        try
        {
            return JsonSerializer.Deserialize<LedgerHead>(File.ReadAllBytes(_path));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or JsonException)
        {
            return null;
        }
    }

    /// <summary>Replaces the head as a whole: a kill leaves the old one or the new one.</summary>
    public void Write(LedgerHead head)
    {
        var fresh = _path + ".new";
        using (var file = PrivateFiles.Open(fresh, FileMode.Create))
        {
            JsonSerializer.Serialize(file, head);
            file.Flush(flushToDisk: true);
        }

        File.Move(fresh, _path, overwrite: true);
    }
}
