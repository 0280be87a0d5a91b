using System.Collections.Immutable;
using ScaleLink.Daemon.Journal;

namespace ScaleLink.Daemon.Workflows.PadInterchange;

/// <summary>Pad interchanges by number.</summary>
internal sealed record InterchangeBook(ImmutableSortedDictionary<long, InterchangeRecord> All)
{
    public static readonly InterchangeBook Empty = new(ImmutableSortedDictionary<long, InterchangeRecord>.Empty);

    /// <summary>The one that goes on, or the last one; absent before the first.</summary>
    public InterchangeRecord? Newest => All.IsEmpty ? null : All.Values.Last();

    /// <summary>After one more step of one of them.</summary>
    public InterchangeBook After(JournalEntry<InterchangeEvent> step)
    {
        var before = step.Body.Interchange == 0
            ? new InterchangeRecord { Id = step.Id, BegunAt = step.At, BegunBy = step.Who }
            : All.GetValueOrDefault(step.Body.Interchange);
        return before is null ? this : new(All.SetItem(before.Id, before.After(step.Body, step.Who, step.At)));
    }
}
