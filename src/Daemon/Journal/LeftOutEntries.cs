namespace ScaleLink.Daemon.Journal;

/// <summary>An entry of the ledger that cannot be used.</summary>
/// <param name="Id">Its number.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Subject">What it is about.</param>
/// <param name="Because">Why it cannot be used.</param>
internal sealed record LeftOutEntry(long Id, string Kind, string Subject, string Because)
{
    /// <summary>What to do next, for one or many.</summary>
    public const string Remedy =
        "What they said is not counted: look at the calibrations, zeros and sessions they name before you weigh. If a newer ScaleLink wrote them, use that; otherwise restore a backup of the ledger, and test the disk.";

    /// <summary>The entry, named.</summary>
    public string Name => $"entry {Id} ({Kind} of {Subject})";

    /// <summary>What is wrong.</summary>
    public string Message => $"The {Name} of the ledger cannot be read and is left out: {Because}.";
}

/// <summary>The entries of one ledger that are left out, each named once. Safe from any thread.</summary>
internal sealed class LeftOutEntries
{
    private readonly Lock _gate = new();
    private readonly SortedDictionary<long, LeftOutEntry> _entries = [];

    /// <summary>Told of each one more, on the thread that came upon it.</summary>
    public event Action? Found;

    /// <summary>All of them, by number.</summary>
    public IReadOnlyList<LeftOutEntry> All
    {
        get
        {
            lock (_gate)
                return [.. _entries.Values];
        }
    }

    /// <summary>All of them in one sentence; nothing when there are none.</summary>
    public string? Sentence => All switch
    {
        [] => null,
        [var one] => one.Message,
        var many => $"{many.Count} entries of the ledger cannot be read and are left out: {string.Join(", ", many.Take(3).Select(e => e.Name))}{(many.Count > 3 ? " and others" : "")}.",
    };

    /// <summary>Names one; the first reason stays.</summary>
    public void Add(long id, string kind, string subject, string because)
    {
        lock (_gate)
            if (!_entries.TryAdd(id, new(id, kind, subject, because.TrimEnd('.'))))
                return;
        Found?.Invoke();
    }
}
