using ScaleLink.Measure;
using ScaleLink.Weighing.Settling;
using ScaleLink.Weighing.Settling.RockingBlind;

namespace ScaleLink.Daemon.Bay;

/// <summary>
/// Cross weight while the car rocks or is leaned on. Every rest becomes the reference for total and centre of gravity; every bounce that ends where it began
/// teaches which combination of the loads the rocking leaves alone. Silent when the car is no longer the one that was referred to.
/// </summary>
internal sealed class RockingCrossWeight(BlindDirection prior)
{
    // A bounce that ends elsewhere had a perch turned in it, or friction let go: it would teach the turn, not the rocking.
    private const double SameRestKg = 1.0;
    // A driver who gets in changes the total by more than this, hands that push or lean by less; rocking averages out over half a second.
    private const double SameTotalShare = 0.04;
    private const double TotalSmoothing = 1 / 10.0;

    private readonly RockingLearner _learner = new();
    private RockingBlindCrossWeight _blind = new(prior);
    private Corners? _rest;
    private double _total;
    private bool _isAtRest;

    /// <summary>Takes one more block and the reading made with it; gives cross weight, percent, with what the rocking tells joined in.</summary>
    public Value? Add(in Corners block, in SettlingReading reading, in Corners noise)
    {
        _total = _total == 0 ? block.Sum : _total + TotalSmoothing * (block.Sum - _total);
        var blind = _blind.Add(block, noise);
        if (reading.Verdict == SettlingVerdict.Settled)
        {
            if (reading.WeighingReady && !_isAtRest)
                Rest(reading.Loads, reading.StandardUncertainty ?? noise, noise);
            return reading.CrossWeightPercent;
        }

        _isAtRest = false;
        if (_rest is null)
            return reading.CrossWeightPercent;
        _learner.Add(block);
        return IsSameCar ? CombinedCrossWeight.Of(reading.CrossWeightPercent, blind) : reading.CrossWeightPercent;
    }

    /// <summary>The car went off the pads, or time was left out.</summary>
    public void Interrupt()
    {
        _learner.Drop();
        _blind = new RockingBlindCrossWeight(_learner.Join(prior));
        (_rest, _total, _isAtRest) = (null, 0, false);
    }

    private bool IsSameCar => _rest is { } rest && Math.Abs(_total - rest.Sum) < SameTotalShare * rest.Sum;

    private void Rest(in Corners loads, in Corners uncertainty, in Corners noise)
    {
        if (_rest is { } before && IsNear(before, loads))
        {
            _learner.Finish(loads, noise);
            _blind = new RockingBlindCrossWeight(_learner.Join(prior));
        }
        else
        {
            _learner.Drop();
        }

        _blind.Refer(loads, uncertainty);
        (_rest, _isAtRest) = (loads, true);
    }

    private static bool IsNear(in Corners a, in Corners b)
    {
        var off = a - b;
        return off.Dot(off) < SameRestKg * SameRestKg;
    }
}
