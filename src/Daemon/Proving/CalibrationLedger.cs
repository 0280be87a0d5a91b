using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Pipeline;
using ScaleLink.Weighing.Calibration;

namespace ScaleLink.Daemon.Proving;

/// <summary>A calibration that was put into force.</summary>
/// <param name="Calibration">What it says.</param>
/// <param name="Proof">The proof that made it.</param>
/// <param name="Note">Remark of whoever adopted it.</param>
/// <param name="Again">True when it had been in force before and was taken up again.</param>
public sealed record AdoptedCalibration(PadCalibration Calibration, long Proof, string Note, bool Again)
{
    /// <summary>Who put it into force; from the entry.</summary>
    public string Who { get; init; } = "";

    /// <summary>When, UTC; from the entry.</summary>
    public DateTimeOffset At { get; init; }
}

/// <summary>Calibrations in the ledger, by the pad's serial number. The newest entry of a pad is the one in force.</summary>
public sealed class CalibrationLedger(LedgerDatabase ledger) : ICalibrationStore
{
    private static readonly EntryKind<Written> Kind = new("calibration", ProofFlowJson.Options);

    /// <inheritdoc/>
    public PadCalibration? InForce(string serialNumber) => Kind.Newest(ledger, serialNumber) is { } entry ? Read(entry).Calibration : null;

    /// <summary>Everything that was put into force, oldest first; of one pad or of all.</summary>
    public IReadOnlyList<AdoptedCalibration> All(string? serialNumber = null) => [.. Kind.All(ledger, serialNumber).Select(Read)];

    /// <summary>Puts a calibration into force; it is on the disk when this returns.</summary>
    public AdoptedCalibration Append(AdoptedCalibration adopted)
    {
        ArgumentNullException.ThrowIfNull(adopted);
        var body = new Written(adopted.Calibration, adopted.Calibration.Identity, adopted.Proof, adopted.Note, adopted.Again);
        return Read(Kind.Append(ledger, adopted.At, adopted.Calibration.Pad, adopted.Who, body));
    }

    private static AdoptedCalibration Read(JournalEntry<Written> entry) =>
        new(entry.Body.Calibration, entry.Body.Proof, entry.Body.Note, entry.Body.Again) { Who = entry.Who, At = entry.At };

    private sealed record Written(PadCalibration Calibration, string Identity, long Proof, string Note, bool Again);
}
