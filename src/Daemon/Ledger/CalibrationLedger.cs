using System.Text.Json;
using ScaleLink.Daemon.Pipeline;
using ScaleLink.Weighing.Calibration;

namespace ScaleLink.Daemon.Ledger;

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
    private const string Kind = "calibration";

    /// <inheritdoc/>
    public PadCalibration? InForce(string serialNumber) => ledger.Newest(Kind, serialNumber) is { } entry ? Read(entry).Calibration : null;

    /// <summary>Everything that was put into force, oldest first; of one pad or of all.</summary>
    public IReadOnlyList<AdoptedCalibration> All(string? serialNumber = null) => [.. ledger.Entries(Kind, serialNumber).Select(Read)];

    /// <summary>Puts a calibration into force; it is on the disk when this returns.</summary>
    public AdoptedCalibration Append(AdoptedCalibration adopted)
    {
        ArgumentNullException.ThrowIfNull(adopted);
        var body = JsonSerializer.Serialize(new Body(adopted.Calibration, adopted.Calibration.Identity, adopted.Proof, adopted.Note, adopted.Again), ProofFlowJson.Options);
        return Read(ledger.Append(adopted.At, Kind, adopted.Calibration.Pad, adopted.Who, body));
    }

    private static AdoptedCalibration Read(LedgerEntry entry)
    {
        var body = JsonSerializer.Deserialize<Body>(entry.Body, ProofFlowJson.Options)!;
        return new AdoptedCalibration(body.Calibration, body.Proof, body.Note, body.Again) { Who = entry.Who, At = entry.At };
    }

    private sealed record Body(PadCalibration Calibration, string Identity, long Proof, string Note, bool Again);
}
