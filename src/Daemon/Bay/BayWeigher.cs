using ScaleLink.Daemon.Configuration;
using ScaleLink.Measure;
using ScaleLink.Weighing.Settling;
using ScaleLink.Weighing.Settling.RockingBlind;

namespace ScaleLink.Daemon.Bay;

/// <summary>Makes a reading of the bay from the blocks of its pads.</summary>
internal sealed class BayWeigher
{
    private readonly IReadOnlyList<PadChannel> _pads;
    private readonly SettlingEstimator _estimator;
    private readonly RaisedRule _raised;
    private readonly double _raisedBelowKg;
    private readonly PadsAbreast _abreast;
    private readonly RockingPrior _prior;
    private readonly Func<BayReading, BayReading> _correct;
    private RockingCrossWeight _rocking;
    private BlindDirection _direction;
    private long _seq;

    /// <summary>A weigher for the pads of one bay.</summary>
    /// <param name="pads">One a corner.</param>
    /// <param name="weigh">Bands.</param>
    /// <param name="prior">How the car in the bay rocks; it may be another car tomorrow.</param>
    /// <param name="correct">Takes what the patch does out of a reading.</param>
    /// <param name="noise">Standard deviation of a block at rest, kg, as an earlier run has learned it.</param>
    public BayWeigher(IReadOnlyList<PadChannel> pads, WeighConfiguration weigh, RockingPrior prior, Func<BayReading, BayReading> correct, Corners? noise = null)
    {
        ArgumentNullException.ThrowIfNull(weigh);
        ArgumentNullException.ThrowIfNull(prior);
        (_prior, _correct, _direction) = (prior, correct, prior.Direction);
        _rocking = new RockingCrossWeight(_direction);
        (_pads, _abreast) = (pads, new PadsAbreast(pads));
        _estimator = new SettlingEstimator(noise is { } learned
            ? new SettlingOptions { ToleranceKg = weigh.SettledToleranceKg, NoiseKg = learned }
            : new SettlingOptions { ToleranceKg = weigh.SettledToleranceKg });
        (_raised, _raisedBelowKg) = (new RaisedRule(weigh.RaisedBelowKg), weigh.RaisedBelowKg);
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
            return ReadingWriter.Incomplete(instant, blocks, _raisedBelowKg);
        }

        var loads = Corners.From(c => blocks[c].LoadKg!.Value);
        if (_raised.Add(loads) is { Count: > 0 } off)
        {
            Interrupt();
            return ReadingWriter.Raised(instant, blocks, off);
        }

        _abreast.Look(toNs);
        FollowCar();
        var estimate = _estimator.Add(loads);
        return _correct(ReadingWriter.Weighed(instant, blocks, estimate with { CrossWeightPercent = _rocking.Add(loads, estimate, _estimator.NoiseKg) }));
    }

    // What bounces taught of the last car says nothing of this one.
    private void FollowCar()
    {
        if (ReferenceEquals(_prior.Direction, _direction))
            return;
        _direction = _prior.Direction;
        _rocking = new RockingCrossWeight(_direction);
    }

    /// <summary>Time was left out: what went before says nothing of what comes.</summary>
    public void Interrupt()
    {
        _estimator.Reset();
        _rocking.Interrupt();
        _abreast.Interrupt();
    }
}
