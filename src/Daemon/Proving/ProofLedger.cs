using ScaleLink.Daemon.Journal;
using ScaleLink.Weighing.Calibration;

namespace ScaleLink.Daemon.Proving;

/// <summary>
/// Proofs in the ledger, an entry for every step. The entry that begins a proof gives it its number; the others name it. A proof
/// is made anew from its entries.
/// </summary>
public sealed class ProofLedger(LedgerDatabase ledger, CalibrationLedger calibrations)
{
    private const string Name = "proof";
    private static readonly EntryKind<ProofEvent> Kind = new(Name, ProofFlowJson.Options);

    /// <summary>Begins a proof; it is on the disk when this returns.</summary>
    public ProofRecord Begin(ProofPlan plan, string who, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var entry = Append(plan.Before.Pad, who, at, new ProofEvent { Begun = plan });
        return new ProofRecord { Id = entry.Id, Flow = ProofFlow.Begin(plan), BegunAt = entry.At, BegunBy = who };
    }

    /// <summary>Writes what happened to a proof; it is on the disk when this returns.</summary>
    public void Append(ProofRecord proof, string who, DateTimeOffset at, ProofEvent happened)
    {
        ArgumentNullException.ThrowIfNull(proof);
        ArgumentNullException.ThrowIfNull(happened);
        Append(proof.SerialNumber, who, at, happened with { Proof = proof.Id });
    }

    /// <summary>Every proof, oldest first; of one pad or of all.</summary>
    public IReadOnlyList<ProofRecord> All(string? serialNumber = null)
    {
        Dictionary<long, ProofRecord> proofs = [];
        foreach (var entry in Kind.All(ledger, serialNumber))
        {
            var happened = entry.Body;
            if (happened.Begun is { } plan)
                proofs[entry.Id] = new ProofRecord { Id = entry.Id, Flow = new ProofFlow { Plan = plan }, BegunAt = entry.At, BegunBy = entry.Who };
            else if (proofs.TryGetValue(happened.Proof, out var proof))
                proofs[proof.Id] = proof.After(happened, entry.Who, entry.At);
        }

        // A calibration in force is what ends an adopted proof: one entry for both, so that there is never one without the other.
        foreach (var adopted in calibrations.All(serialNumber).Where(c => !c.Again))
            if (proofs.TryGetValue(adopted.Proof, out var proof))
                proofs[proof.Id] = proof.Adopted(adopted);
        return [.. proofs.Values.OrderBy(p => p.Id)];
    }

    /// <summary>One proof by its number.</summary>
    public ProofRecord? Find(long id) => ledger.Entry(id) is { Kind: Name } entry ? All(entry.Subject).FirstOrDefault(p => p.Id == id) : null;

    private JournalEntry<ProofEvent> Append(string serialNumber, string who, DateTimeOffset at, ProofEvent happened) => Kind.Append(ledger, at, serialNumber, who, happened);
}
