using System.Text.Json;
using ScaleLink.Daemon.Pipeline;

namespace ScaleLink.Daemon.Ledger;

/// <summary>Zeros in the ledger, by the pad's serial number: another pad on the same port has no zero.</summary>
public sealed class ZeroLedger(LedgerDatabase ledger) : IZeroStore
{
    private const string Kind = "zero";
    private const string TrackKind = "zero-tracking";
    private const string CheckKind = "zero-check";
    private const string Daemon = "scalelinkd";

    /// <inheritdoc/>
    public ZeroPoint? Latest(string serialNumber) =>
        ledger.Newest(Kind, serialNumber) is { } entry ? JsonSerializer.Deserialize<ZeroPoint>(entry.Body) : null;

    /// <inheritdoc/>
    public IReadOnlyList<ZeroPoint> History(string serialNumber) =>
        [.. ledger.Entries(Kind, serialNumber).Select(entry => JsonSerializer.Deserialize<ZeroPoint>(entry.Body)!)];

    /// <inheritdoc/>
    public void Append(ZeroPoint zero)
    {
        ArgumentNullException.ThrowIfNull(zero);
        ledger.Append(zero.TakenAt, Kind, zero.SerialNumber, zero.Who, JsonSerializer.Serialize(zero));
    }

    /// <inheritdoc/>
    public double TrackedKg(ZeroPoint zero)
    {
        ArgumentNullException.ThrowIfNull(zero);
        var entry = ledger.Newest(TrackKind, zero.SerialNumber);
        return entry is not null && JsonSerializer.Deserialize<Kept>(entry.Body) is { } kept && kept.ZeroTakenAt == zero.TakenAt ? kept.Kg : 0;
    }

    /// <inheritdoc/>
    public void AppendTrack(ZeroPoint zero, double sumKg, DateTimeOffset at) => Append(TrackKind, zero, sumKg, at);

    /// <inheritdoc/>
    public void AppendCheck(ZeroPoint zero, double kg, DateTimeOffset at) => Append(CheckKind, zero, kg, at);

    private void Append(string kind, ZeroPoint zero, double kg, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(zero);
        ledger.Append(at, kind, zero.SerialNumber, Daemon, JsonSerializer.Serialize(new Kept(zero.TakenAt, kg)));
    }

    private sealed record Kept(DateTimeOffset ZeroTakenAt, double Kg);
}
