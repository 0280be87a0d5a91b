using ScaleLink.Daemon.Links;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Weighing.Freezing;

namespace ScaleLink.Daemon.Bay;

/// <summary>How a pad is watched for a converter that stops while samples go on.</summary>
internal enum FreezeEvidence
{
    /// <summary>Neither its noise nor anything beside it could tell.</summary>
    None,
    /// <summary>Its noise shows above the division: one number for long is a fault.</summary>
    Noise,
    /// <summary>Its other cells, or the other pads under the car, would move without it.</summary>
    Siblings,
}

/// <summary>Watches the cells of one pad for numbers that stand still. Its pad guards it.</summary>
internal sealed class FreezeWatch
{
    // Twenty of these and less move under a car that is set up; of coarser ones the others may not move that far.
    private const double CoarsestKg = 0.5;

    private ValueWatch[] _cells = [];
    private ValueWatch _whole = new();
    private SiblingWatch _siblings = new(0);
    private long _heldAt = -1;

    /// <summary>All cells added up, for a comparison with the other pads of the bay.</summary>
    public SeenValue Whole => _whole.Seen;

    /// <summary>Bit 0: the first cell stands still, and so on; all of them when the pad does beside the others. 0: none.</summary>
    public int Still { get; private set; }

    /// <summary>What would show it.</summary>
    /// <param name="kgPerCount">Of the sum of its cells.</param>
    public FreezeEvidence Evidence(double kgPerCount) =>
        _cells.Length > 0 && _cells.All(c => c.ShowsNoise) ? FreezeEvidence.Noise
        : _whole.Division * Math.Abs(kgPerCount) <= CoarsestKg ? FreezeEvidence.Siblings
        : FreezeEvidence.None;

    /// <summary>A sample of a sound converter; true when a cell has come to a standstill, or goes again.</summary>
    public bool Add(in RawSample sample, long atNs)
    {
        if (_cells.Length != sample.Cells)
            Begin(sample.Cells);
        var (sum, still) = (0L, 0);
        var seconds = atNs / (double)Nanoseconds.PerSecond;
        for (var cell = 0; cell < _cells.Length; cell++)
        {
            _cells[cell].Add(seconds, sample.Counts[cell]);
            sum += sample.Counts[cell];
            still |= _cells[cell].IsStill ? 1 << cell : 0;
        }

        _whole.Add(seconds, sum);
        Span<SeenValue> seen = stackalloc SeenValue[_cells.Length];
        for (var cell = 0; cell < _cells.Length; cell++)
            seen[cell] = _cells[cell].Seen;
        if (_siblings.Look(seconds, seen) is { } one)
            still |= 1 << one;
        if (_heldAt == Whole.Changes)
            still = (1 << _cells.Length) - 1;
        var isNews = still != Still;
        Still = still;
        return isNews;
    }

    /// <summary>The other pads of the bay moved and this one did not: it stands still until it gives another number.</summary>
    public void Hold() => _heldAt = Whole.Changes;

    /// <summary>A sample that says nothing of its cells.</summary>
    public void Interrupt()
    {
        foreach (var cell in _cells)
            cell.Interrupt();
        _whole.Interrupt();
        _siblings.Interrupt();
    }

    /// <summary>Another pad, or the same one started anew.</summary>
    public void Restart() => Begin(0);

    private void Begin(int cells)
    {
        (_cells, _siblings, _whole) = ([.. Enumerable.Range(0, cells).Select(_ => new ValueWatch())], new SiblingWatch(cells), new ValueWatch());
        (_heldAt, Still) = (-1, 0);
    }
}
