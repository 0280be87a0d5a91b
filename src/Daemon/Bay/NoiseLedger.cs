using ScaleLink.Daemon.Journal;
using ScaleLink.Measure;

namespace ScaleLink.Daemon.Bay;

/// <summary>The repeatability of the bay's pads at rest, learned in quiet times and kept for the next start.</summary>
internal sealed class NoiseLedger(LedgerDatabase ledger, string bay, TimeProvider time)
{
    private const string Who = "daemon";
    private static readonly EntryKind<double[]> Kind = new("noise");

    // Less of a change is not worth an entry: the estimator bears a factor of two.
    private const double WorthKeeping = 1.2;

    private Corners? _kept;

    /// <summary>What was learned last, standard deviation of a 50 ms block, kg; nothing before the first lesson.</summary>
    public Corners? Recall()
    {
        _kept = Kind.Newest(ledger, bay)?.Body is { Length: 4 } kg && kg.All(k => k > 0 && double.IsFinite(k))
            ? Corners.From(c => kg[(int)c])
            : null;
        return _kept;
    }

    /// <summary>Keeps what has been learned, when it differs from what is kept.</summary>
    public void Keep(Corners noise)
    {
        if (_kept is { } kept && Enum.GetValues<Corner>().All(c => noise[c] < kept[c] * WorthKeeping && noise[c] > kept[c] / WorthKeeping))
            return;
        Kind.Append(ledger, time.GetUtcNow(), bay, Who, [.. Enum.GetValues<Corner>().Select(c => noise[c])]);
        _kept = noise;
    }
}
