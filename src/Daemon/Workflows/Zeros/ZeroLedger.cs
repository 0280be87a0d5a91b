using System.Collections.Immutable;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Journal;

namespace ScaleLink.Daemon.Workflows.Zeros;

/// <summary>Zeros in the ledger, by the pad's serial number: another pad on the same port has no zero.</summary>
internal sealed class ZeroLedger(LedgerDatabase ledger) : IZeroStore
{
    private static readonly EntryKind<ZeroPoint> Kind = new("zero");
    private static readonly EntryKind<Kept> TrackKind = new("zero-tracking");
    private static readonly EntryKind<Kept> CheckKind = new("zero-check");
    private const string Daemon = "scalelinkd";

    /// <summary>The zeros taken in this run, by pad. Those from before are known to the pads, each to its own.</summary>
    internal static readonly FoldedKind<ImmutableDictionary<string, ZeroPoint>, ZeroPoint> Steps = new(Kind, (zeros, step) => zeros.SetItem(step.Subject, step.Body));

    internal Workflow<ImmutableDictionary<string, ZeroPoint>> Begin() => new(ledger, ImmutableDictionary<string, ZeroPoint>.Empty, null);

    /// <inheritdoc/>
    public ZeroPoint? Latest(string serialNumber) => Kind.Newest(ledger, serialNumber)?.Body;

    /// <inheritdoc/>
    public IReadOnlyList<ZeroPoint> History(string serialNumber) => [.. Kind.All(ledger, serialNumber).Select(entry => entry.Body)];

    /// <inheritdoc/>
    public double TrackedKg(ZeroPoint zero)
    {
        ArgumentNullException.ThrowIfNull(zero);
        return TrackKind.Newest(ledger, zero.SerialNumber)?.Body is { } kept && kept.ZeroTakenAt == zero.TakenAt ? kept.Kg : 0;
    }

    /// <inheritdoc/>
    public void AppendTrack(ZeroPoint zero, double sumKg, DateTimeOffset at) => Append(TrackKind, zero, sumKg, at);

    /// <inheritdoc/>
    public void AppendCheck(ZeroPoint zero, double kg, DateTimeOffset at) => Append(CheckKind, zero, kg, at);

    private void Append(EntryKind<Kept> kind, ZeroPoint zero, double kg, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(zero);
        kind.Append(ledger, at, zero.SerialNumber, Daemon, new Kept(zero.TakenAt, kg));
    }

    private sealed record Kept(DateTimeOffset ZeroTakenAt, double Kg);
}
