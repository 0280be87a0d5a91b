using ScaleLink.Daemon.Configuration;
using ScaleLink.Weighing;
using ScaleLink.Weighing.Settling;

namespace ScaleLink.Daemon.Pipeline;

/// <summary>Makes a reading of the bay from the blocks of its pads.</summary>
public sealed class BayWeigher
{
    private readonly IReadOnlyList<PadChannel> _pads;
    private readonly SettlingEstimator _estimator;
    private readonly RaisedRule _raised;
    private readonly RockingCrossWeight _rocking;
    private long _seq;

    /// <summary>A weigher for the pads of one bay.</summary>
    /// <param name="pads">The pads.</param>
    /// <param name="weigh">When a load counts as settled, and as a car at all.</param>
    /// <param name="car">What is known of the car.</param>
    /// <param name="noise">Standard deviation of a block at rest, kg, as an earlier run has learned it.</param>
    public BayWeigher(IReadOnlyList<PadChannel> pads, WeighConfiguration weigh, CarConfiguration? car, Corners? noise = null)
    {
        ArgumentNullException.ThrowIfNull(weigh);
        _rocking = new RockingCrossWeight(CarRocking.DirectionOf(car));
        _pads = pads;
        _estimator = new SettlingEstimator(noise is { } learned
            ? new SettlingOptions { ToleranceKg = weigh.SettledToleranceKg, NoiseKg = learned }
            : new SettlingOptions { ToleranceKg = weigh.SettledToleranceKg });
        _raised = new RaisedRule(weigh.RaisedBelowKg);
    }

    /// <summary>Standard deviation of a block at rest, kg: as learned so far.</summary>
    public Corners NoiseKg => _estimator.NoiseKg;

    /// <summary>Weighs one block of time.</summary>
    public BayReading Weigh(long fromNs, long toNs)
    {
        var blocks = _pads.ToDictionary(p => p.Corner, p => p.Block(fromNs, toNs));
        var instant = (Seq: ++_seq, AtNs: toNs);
        if (Corners.All.ToArray().Any(c => !blocks.TryGetValue(c, out var b) || b.LoadKg is null))
        {
            Interrupt();
            return ReadingWriter.Incomplete(instant, blocks);
        }

        var loads = Corners.From(c => blocks[c].LoadKg!.Value);
        if (_raised.Add(loads) is { Count: > 0 } off)
        {
            Interrupt();
            return ReadingWriter.Raised(instant, blocks, off);
        }

        var estimate = _estimator.Add(loads);
        return ReadingWriter.Weighed(instant, blocks, estimate with { CrossWeightPercent = _rocking.Add(loads, estimate, _estimator.NoiseKg) });
    }

    /// <summary>Time was left out: what went before says nothing of what comes.</summary>
    public void Interrupt()
    {
        _estimator.Reset();
        _rocking.Interrupt();
    }
}
