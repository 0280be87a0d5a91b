using System.Text.Json;
using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Journal;

/// <summary>
/// Takes over what was found behind a damage of the ledger, on somebody's decision: it cannot be told whether what is missing between would have changed
/// what these entries mean.
/// </summary>
internal static class LedgerTakeOver
{
    /// <summary>The newest damage that left entries behind it which nobody has taken over yet.</summary>
    public static LedgerDamage? Offered(LedgerDatabase ledger) => Newest(ledger)?.Body;

    /// <summary>Opens the ledger as a daemon does, with nobody else on it, and takes over what there is.</summary>
    /// <exception cref="StartException">As <see cref="Take"/>; SL-364: a daemon works on it; SL-362: it cannot be opened.</exception>
    public static TakenOver Run(string path, string bay, string who, TimeProvider time) => LedgerOpening.OrSay(path, () =>
    {
        using var alone = LedgerLock.Take(path, LockHolder.Me(time.GetUtcNow(), bay));
        using var ledger = LedgerOpening.Open(path, time.GetUtcNow()).Ledger;
        return Take(ledger, who, time.GetUtcNow());
    });

    /// <summary>Takes them over; they count when the ledger is opened the next time.</summary>
    /// <param name="ledger">The ledger as it was rescued.</param>
    /// <param name="who">Who decides; goes on record.</param>
    /// <param name="now">UTC.</param>
    /// <exception cref="StartException">SL-355: no name; SL-366: there is nothing to take over.</exception>
    public static TakenOver Take(LedgerDatabase ledger, string who, DateTimeOffset now)
    {
        if (PlainText.Clean(who, 64).Trim() is not { Length: > 0 } name)
            throw new StartException(CalibrationCodes.NameOrReasonMissing, "The name is missing.", "Enter it after --take-over.");
        var damage = Newest(ledger) ?? throw Nothing("No damage of this ledger has left entries that could be taken over, or they are already.", "Start the daemon as usual.");
        var entries = Behind(Path.Combine(Path.GetDirectoryName(ledger.Path) ?? "", Path.GetFileName(damage.Body.DamagedFile)), ledger.Before(damage.Id)?.Id ?? 0, damage.Id);
        if (entries.Count == 0)
            throw Nothing($"In {damage.Body.DamagedFile} nothing can be read any more that holds by itself.", "Restore a backup of that file beside the ledger if there is one.");
        var taken = new TakenOver(entries.Count, entries[0].Stored.Id, entries[^1].Stored.Id, damage.Body.DamagedFile);
        ledger.Append(now, TakenOver.Kind.Name, "ledger", name, JsonSerializer.Serialize(taken), alongside: entries);
        return taken;
    }

    private static JournalEntry<LedgerDamage>? Newest(LedgerDatabase ledger)
    {
        var taken = TakenOver.Kind.All(ledger).Select(t => t.Body.DamagedFile).ToHashSet();
        return LedgerDamage.Kind.All(ledger).LastOrDefault(d => d.Body.Behind > 0 && !taken.Contains(d.Body.DamagedFile));
    }

    private static List<UnchainedEntry> Behind(string damaged, long kept, long entryOfDamage)
    {
        if (!File.Exists(damaged))
            throw Nothing($"The damaged ledger {damaged} is not there any more.", "Put it back beside the ledger, under that name.");
        // Its numbers end before that of the entry which tells of the damage.
        return LedgerFiles.OnCopy(damaged, from => BehindDamage.Find(from, kept, entryOfDamage - 1).Where(e => e.Stored.Id < entryOfDamage).ToList()) ?? [];
    }

    private static StartException Nothing(string message, string remedy) => new(LedgerCodes.NothingToTakeOver, message, remedy);
}
