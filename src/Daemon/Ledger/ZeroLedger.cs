using System.Text.Json;
using ScaleLink.Daemon.Pipeline;

namespace ScaleLink.Daemon.Ledger;

/// <summary>Zeros in the ledger, by the pad's serial number: another pad on the same port has no zero.</summary>
public sealed class ZeroLedger(LedgerDatabase ledger) : IZeroStore
{
    private const string Kind = "zero";

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
}
