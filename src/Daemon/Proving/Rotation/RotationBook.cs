using System.Collections.Immutable;
using ScaleLink.Daemon.Journal;

namespace ScaleLink.Daemon.Proving;

/// <summary>Rotations by number.</summary>
internal sealed record RotationBook(ImmutableSortedDictionary<long, RotationRecord> All)
{
    public static readonly RotationBook Empty = new(ImmutableSortedDictionary<long, RotationRecord>.Empty);

    /// <summary>The one that goes on, or the last one; absent before the first.</summary>
    public RotationRecord? Newest => All.IsEmpty ? null : All.Values.Last();

    /// <summary>After one more step of one of them.</summary>
    public RotationBook After(JournalEntry<RotationEvent> step)
    {
        var before = step.Body.Rotation == 0
            ? new RotationRecord { Id = step.Id, BegunAt = step.At, BegunBy = step.Who }
            : All.GetValueOrDefault(step.Body.Rotation);
        return before is null ? this : new(All.SetItem(before.Id, before.After(step.Body, step.Who, step.At)));
    }
}
