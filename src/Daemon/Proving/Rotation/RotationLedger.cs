using ScaleLink.Daemon.Journal;
using ScaleLink.Weighing.Calibration;

namespace ScaleLink.Daemon.Proving;

/// <summary>Rotations in the ledger, an entry for every step; the first one gives the rotation its number.</summary>
public sealed class RotationLedger(LedgerDatabase ledger, string bay)
{
    private static readonly EntryKind<RotationEvent> Kind = new("rotation", ProofFlowJson.Options);

    /// <summary>Begins a rotation with its first weighing; it is on the disk when this returns.</summary>
    public RotationRecord Begin(PlacementReading first, string who, DateTimeOffset at)
    {
        var happened = new RotationEvent { Weighed = first };
        var entry = Write(happened, who, at);
        return new RotationRecord { Id = entry.Id, BegunAt = entry.At, BegunBy = who }.After(happened, who, entry.At);
    }

    /// <summary>Writes what happened to a rotation; it is on the disk when this returns.</summary>
    public RotationRecord Append(RotationRecord rotation, RotationEvent happened, string who, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(rotation);
        ArgumentNullException.ThrowIfNull(happened);
        var entry = Write(happened with { Rotation = rotation.Id }, who, at);
        return rotation.After(happened, who, entry.At);
    }

    /// <summary>Every rotation of the bay, oldest first.</summary>
    public IReadOnlyList<RotationRecord> All()
    {
        SortedDictionary<long, RotationRecord> all = [];
        foreach (var entry in Kind.All(ledger, bay))
        {
            var happened = entry.Body;
            var before = happened.Rotation == 0
                ? new RotationRecord { Id = entry.Id, BegunAt = entry.At, BegunBy = entry.Who }
                : all.GetValueOrDefault(happened.Rotation);
            if (before is not null)
                all[before.Id] = before.After(happened, entry.Who, entry.At);
        }

        return [.. all.Values];
    }

    private JournalEntry<RotationEvent> Write(RotationEvent happened, string who, DateTimeOffset at) => Kind.Append(ledger, at, bay, who, happened);
}
