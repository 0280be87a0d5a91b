using System.Collections.Immutable;
using ScaleLink.Daemon.Journal;
using ScaleLink.Measure;
using ScaleLink.Weighing.Calibration.Flow;

namespace ScaleLink.Daemon.Workflows.Calibration;

/// <summary>Calibration procedures by number.</summary>
internal sealed record ProcedureBook(ImmutableSortedDictionary<long, ProcedureRecord> All)
{
    public static readonly ProcedureBook Empty = new(ImmutableSortedDictionary<long, ProcedureRecord>.Empty);

    /// <summary>The newest at each corner of those that go on.</summary>
    public ProcedureBook OnTheBenches => new(All.Values.Where(p => p.IsOpen).GroupBy(p => p.Corner).ToImmutableSortedDictionary(g => g.Last().Id, g => g.Last()));

    /// <summary>The newest at a corner.</summary>
    public ProcedureRecord? At(Corner corner) => All.Values.LastOrDefault(p => p.Corner == corner);

    /// <summary>After one more step of one of them.</summary>
    public ProcedureBook After(JournalEntry<ProcedureEvent> step) => step.Body.Begun is { } plan
        ? With(new ProcedureRecord { Id = step.Id, Flow = new ProcedureFlow { Plan = plan }, BegunAt = step.At, BegunBy = step.Who })
        : All.TryGetValue(step.Body.Procedure, out var procedure) ? With(procedure.After(step.Body, step.Who, step.At)) : this;

    /// <summary>After a calibration came into effect: what ends an adopted calibration procedure. One entry for both, so that there is never one without the other.</summary>
    public ProcedureBook After(AdoptedCalibration adopted) => !adopted.Again && All.TryGetValue(adopted.Procedure, out var procedure) ? With(procedure.Adopted(adopted)) : this;

    private ProcedureBook With(ProcedureRecord procedure) => new(All.SetItem(procedure.Id, procedure));
}
