using System.Text.Json.Serialization;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Journal;
using ScaleLink.Measure;
using ScaleLink.Weighing.Calibration.Flow;
using ScaleLink.Weighing.Pads;

namespace ScaleLink.Daemon.Workflows.Calibration;

/// <summary>A calibration that was put into effect.</summary>
/// <param name="Calibration">What it says.</param>
/// <param name="Procedure">The calibration procedure that made it.</param>
/// <param name="Note">Remark of whoever adopted it.</param>
/// <param name="Again">True when it had been in effect before and was taken up again.</param>
internal sealed record AdoptedCalibration(PadCalibration Calibration, long Procedure, string Note, bool Again)
{
    /// <summary>Who put it into effect; from the entry.</summary>
    public string Who { get; init; } = "";

    /// <summary>When, UTC; from the entry.</summary>
    public DateTimeOffset At { get; init; }
}

/// <summary>Calibrations in the ledger, by the pad's serial number. The newest entry of a pad is the one in effect.</summary>
internal sealed class CalibrationLedger(LedgerDatabase ledger) : ICalibrationStore
{
    private static readonly EntryKind<Written> Kind = new("calibration", ProcedureFlowJson.Options);

    /// <inheritdoc/>
    public PadCalibration? InEffect(string serialNumber) => Kind.Newest(ledger, serialNumber) is { } entry ? Read(entry).Calibration : null;

    /// <inheritdoc/>
    public PadCalibration? LastAt(Corner corner) =>
        new ProcedureLedger(ledger).All().LastOrDefault(p => p.Corner == corner && p.Calibration is not null) is { } procedure ? InEffect(procedure.SerialNumber) : null;

    /// <summary>Everything that was put into effect, oldest first; of one pad or of all.</summary>
    public IReadOnlyList<AdoptedCalibration> All(string? serialNumber = null) => [.. Kind.All(ledger, serialNumber).Select(Read)];

    /// <summary>Calibrations that came into effect, as part of what a workflow knows.</summary>
    internal static FoldedKind<TState, Written> Folded<TState>(Func<TState, AdoptedCalibration, TState> apply)
        where TState : class => new(Kind, (state, entry) => apply(state, Read(entry)));

    private static AdoptedCalibration Read(JournalEntry<Written> entry) =>
        new(entry.Body.Calibration, entry.Body.Procedure, entry.Body.Note, entry.Body.Again) { Who = entry.Who, At = entry.At };

    /// <summary>As it stands in the ledger.</summary>
    internal sealed record Written(PadCalibration Calibration, string Identity, [property: JsonPropertyName("proof")] long Procedure, string Note, bool Again)
    {
        /// <summary>A calibration that comes into effect.</summary>
        public static Written Of(PadCalibration calibration, long procedure, string note, bool again) => new(calibration, calibration.Identity, procedure, note, again);
    }
}
