using System.Globalization;
using ScaleLink.Measure;

namespace ScaleLink.Daemon.Journal;

/// <summary>
/// What stands under everything that people do step by step: the state as the ledger makes it, and one caller at a time who takes it on. In this
/// order: what the caller has seen is compared with what is newest, the rules judge, the entry is written, the state follows from it, the step is
/// acknowledged. Whatever refuses before the entry is on the disk leaves everything as it was.
/// </summary>
/// <typeparam name="TState">Immutable: readers take it as it is, without waiting for whoever writes.</typeparam>
internal sealed class Workflow<TState>
    where TState : class
{
    private readonly LedgerDatabase _ledger;
    private readonly Lock _gate = new();
    private readonly Dictionary<string, EntryMark> _newest = [];
    private volatile TState _state;

    /// <summary>Takes up what the ledger says.</summary>
    /// <param name="ledger">The ledger.</param>
    /// <param name="seed">The state before the first entry.</param>
    /// <param name="subject">What the workflow is about; null: entries about anything are its own.</param>
    /// <param name="kinds">What makes its state.</param>
    public Workflow(LedgerDatabase ledger, TState seed, string? subject, params IReadOnlyList<FoldedKind<TState>> kinds)
    {
        _ledger = ledger;
        _state = TakeUp.Of(ledger, seed, subject, kinds, mark => _newest[mark.Subject] = mark);
    }

    /// <summary>As it stands now.</summary>
    public TState State => _state;

    /// <summary>Takes a step about something that is known beforehand.</summary>
    /// <inheritdoc cref="Take(Func{TState, string}, Func{TState, NewEntry{TState}}, long?)"/>
    public TState Take(string subject, Func<TState, NewEntry<TState>> rules) => Take(_ => subject, rules);

    /// <summary>Takes a step; it is on the disk when this returns.</summary>
    /// <param name="about">What the step is about.</param>
    /// <param name="rules">Judges the state, and gives the entry.</param>
    /// <param name="seen">Number of the newest entry about it that the caller knows of; null: the caller takes it as it is.</param>
    /// <returns>The state after it.</returns>
    /// <exception cref="StepRefusedException">It was overtaken (SL-565), refused by a rule, or could not be written (SL-365).</exception>
    public TState Take(Func<TState, string> about, Func<TState, NewEntry<TState>> rules, long? seen = null)
    {
        lock (_gate)
        {
            var subject = about(_state);
            if (seen is { } known && _newest.GetValueOrDefault(subject) is var newest && known != (newest?.Id ?? 0))
                throw NotTheNewest(newest);
            var entry = Judge(rules);
            entry.Rehearse(_state, subject);
            var written = Write(entry, subject);
            _newest[subject] = written.Mark;
            return _state = written.Apply(_state);
        }
    }

    /// <summary>Changes what is seen and is not on record, such as how far a watch has come.</summary>
    public void Show(Func<TState, TState> change)
    {
        lock (_gate)
            _state = change(_state);
    }

    /// <summary>Does something that has to keep step with the state, such as handing it on to a pad, while nobody else takes one.</summary>
    public void Alone(Action act)
    {
        lock (_gate)
            act();
    }

    private NewEntry<TState> Judge(Func<TState, NewEntry<TState>> rules)
    {
        try
        {
            return rules(_state);
        }
        catch (RefusedException refused)
        {
            throw new StepRefusedException(refused.Diagnostic);
        }
    }

    private FoldedEntry<TState> Write(NewEntry<TState> entry, string subject)
    {
        try
        {
            return entry.Append(_ledger, subject);
        }
        catch (Exception e) when (WriteFailure.Is(e))
        {
            throw WriteFailure.Refuse(e, _ledger.Path);
        }
    }

    private static StepRefusedException NotTheNewest(EntryMark? newest) => new(LedgerCodes.StepOvertaken,
        newest is null ? "Nothing of that is on record."
            : string.Create(CultureInfo.InvariantCulture, $"Somebody else has taken a step meanwhile: entry {newest.Id} by {newest.Who}, {LocalTime.SecondOfDay(newest.At)}."),
        "Look at it again, then decide.");
}
