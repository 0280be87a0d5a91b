using ScaleLink.Daemon.Journal;

namespace ScaleLink.Daemon.Clocks;

/// <summary>What the times of the entries after it are worth.</summary>
/// <param name="Trust">How far the clock can be believed from here on: <c>Synchronised</c>, <c>FreeRunning</c>, <c>Unset</c> or <c>Unknown</c>.</param>
/// <param name="StepSeconds">How far it was put forward (or back, negative) just before; 0: it was not.</param>
internal sealed record ClockRecord(string Trust, double StepSeconds)
{
    /// <summary>As it stands in the ledger.</summary>
    public static EntryKind<ClockRecord> Kind { get; } = new("clock");

    /// <summary>What a reader of times between two entries has to know; empty: they can be believed, or nobody noted anything.</summary>
    /// <param name="ledger">The ledger.</param>
    /// <param name="first">Number of the first entry.</param>
    /// <param name="last">Number of the last one.</param>
    public static string Remark(LedgerDatabase ledger, long first, long last)
    {
        var records = Kind.All(ledger).Where(r => r.Id <= last).ToList();
        var meanwhile = records.Where(r => r.Id > first).ToList();
        var held = meanwhile.Prepend(records.LastOrDefault(r => r.Id <= first)).OfType<JournalEntry<ClockRecord>>().Select(r => r.Body.Trust).ToList();
        List<string> told = [];
        if (held.Contains(nameof(ClockTrust.Unset)))
            told.Add("the clock had not been set");
        else if (held.Contains(nameof(ClockTrust.FreeRunning)))
            told.Add("the clock ran by itself, in step with no time server");
        if (meanwhile.Any(r => r.Body.StepSeconds != 0))
            told.Add("the clock was put forward or back meanwhile");
        return told.Count == 0 ? "" : $"Times: {string.Join("; ", told)}.";
    }
}
