namespace ScaleLink.Daemon.Journal;

/// <summary>A kind of entry together with what one of them makes of the state of a workflow.</summary>
internal abstract class FoldedKind<TState>
    where TState : class
{
    /// <summary>What the ledger holds of it, oldest first; with a subject, only what is about that.</summary>
    public abstract IEnumerable<FoldedEntry<TState>> Past(LedgerDatabase ledger, string? subject);
}

/// <inheritdoc cref="FoldedKind{TState}"/>
/// <param name="kind">The kind.</param>
/// <param name="apply">The state after one more entry. The same after a step as when the ledger is taken up, and judges nothing.</param>
/// <param name="isWhole">Each entry holds everything that is known of its subject, so that only the newest is taken up.</param>
internal sealed class FoldedKind<TState, T>(EntryKind<T> kind, Func<TState, JournalEntry<T>, TState> apply, bool isWhole = false) : FoldedKind<TState>
    where TState : class
    where T : notnull
{
    /// <summary>A step that the rules have let through, to be written.</summary>
    public NewEntry<TState> Entry(DateTimeOffset at, string who, T body) => new(
        (state, subject) => apply(state, new JournalEntry<T>(0, at, subject, who, body)),
        (ledger, subject) => Folded(kind.Append(ledger, at, subject, who, body)));

    /// <inheritdoc/>
    public override IEnumerable<FoldedEntry<TState>> Past(LedgerDatabase ledger, string? subject) =>
        (isWhole && subject is not null ? kind.Newest(ledger, subject) is { } newest ? [newest] : [] : kind.All(ledger, subject)).Select(Folded);

    private FoldedEntry<TState> Folded(JournalEntry<T> entry) => new(kind.Name, new(entry.Id, entry.At, entry.Subject, entry.Who), state => apply(state, entry));
}

/// <summary>An entry that is in the ledger, ready to be applied.</summary>
internal sealed record FoldedEntry<TState>(string Kind, EntryMark Mark, Func<TState, TState> Apply);

/// <summary>A step that the rules have let through and that is not in the ledger yet.</summary>
/// <param name="Rehearse">The state as it would be: what cannot be applied must not be written.</param>
/// <param name="Append">Writes it; it is on the disk when this returns.</param>
internal sealed record NewEntry<TState>(Func<TState, string, TState> Rehearse, Func<LedgerDatabase, string, FoldedEntry<TState>> Append);

/// <summary>What is told of an entry to somebody who has not seen it.</summary>
internal sealed record EntryMark(long Id, DateTimeOffset At, string Subject, string Who);
