using System.Collections.Immutable;
using ScaleLink.Daemon.Journal;
using ScaleLink.Measure;
using ScaleLink.Weighing.Calibration;

namespace ScaleLink.Daemon.Proving;

/// <summary>Proofs by number.</summary>
internal sealed record ProofBook(ImmutableSortedDictionary<long, ProofRecord> All)
{
    public static readonly ProofBook Empty = new(ImmutableSortedDictionary<long, ProofRecord>.Empty);

    /// <summary>The newest at each corner of those that go on.</summary>
    public ProofBook OnTheBenches => new(All.Values.Where(p => p.IsOpen).GroupBy(p => p.Corner).ToImmutableSortedDictionary(g => g.Last().Id, g => g.Last()));

    /// <summary>The newest at a corner.</summary>
    public ProofRecord? At(Corner corner) => All.Values.LastOrDefault(p => p.Corner == corner);

    /// <summary>After one more step of one of them.</summary>
    public ProofBook After(JournalEntry<ProofEvent> step) => step.Body.Begun is { } plan
        ? With(new ProofRecord { Id = step.Id, Flow = new ProofFlow { Plan = plan }, BegunAt = step.At, BegunBy = step.Who })
        : All.TryGetValue(step.Body.Proof, out var proof) ? With(proof.After(step.Body, step.Who, step.At)) : this;

    /// <summary>After a calibration came into force: what ends an adopted proof. One entry for both, so that there is never one without the other.</summary>
    public ProofBook After(AdoptedCalibration adopted) => !adopted.Again && All.TryGetValue(adopted.Proof, out var proof) ? With(proof.Adopted(adopted)) : this;

    private ProofBook With(ProofRecord proof) => new(All.SetItem(proof.Id, proof));
}
