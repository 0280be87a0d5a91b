namespace ScaleLink.Daemon.Journal;

/// <summary>Makes a state out of what the ledger holds.</summary>
internal static class TakeUp
{
    /// <summary>
    /// The state after all entries, in the order of their numbers: a clock may have been set back between two of them. What does not follow from the
    /// entries before it, as when one of those is lost, is left out by name.
    /// </summary>
    public static TState Of<TState>(LedgerDatabase ledger, TState seed, string? subject, IReadOnlyList<FoldedKind<TState>> kinds, Action<EntryMark>? folded = null)
        where TState : class
    {
        var state = seed;
        foreach (var entry in kinds.SelectMany(k => k.Past(ledger, subject)).OrderBy(e => e.Mark.Id))
            try
            {
                state = entry.Apply(state);
                folded?.Invoke(entry.Mark);
            }
            catch (Exception e) when (e is not OutOfMemoryException)
            {
                // One entry must not cost the start.
                ledger.LeftOut.Add(entry.Mark.Id, entry.Kind, entry.Mark.Subject, e is InvalidOperationException ? e.Message : $"it does not follow from the steps before it ({e.Message})");
            }

        return state;
    }
}
