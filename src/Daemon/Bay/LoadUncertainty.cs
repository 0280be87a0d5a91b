using ScaleLink.Measure;

namespace ScaleLink.Daemon.Bay;

/// <summary>
/// What the calibrations and the tilts of the four pads leave uncertain, carried into anything that is made of the four loads. Source of the
/// rules: JCGM 100:2008 (GUM) 5.1.2, 5.2.2 and G.4.1.
/// </summary>
/// <param name="ofPad">By the calibration of each pad.</param>
/// <param name="tiltKg">By the tilt of each pad, kg, each inclinometer by itself.</param>
internal sealed class LoadUncertainty(Func<Corner, CalibrationUncertainty> ofPad, Func<Corner, double> tiltKg)
{
    private readonly Corners _own = Corners.From(c => ofPad(c).OwnKg);
    private readonly Corners _tilt = Corners.From(tiltKg);
    private readonly Corners _masses = Corners.From(c => ofPad(c).MassesKg);
    private readonly Corners _freedom = Corners.From(c => ofPad(c).DegreesOfFreedom);

    /// <summary>An estimate with rocking and calibration in its uncertainty; nothing is claimed where rocking is not known.</summary>
    /// <param name="estimate">From the loads.</param>
    /// <param name="slope">Its derivative by each load.</param>
    public Value? Combine(Value? estimate, Corners slope)
    {
        if (estimate is not { } e)
            return null;
        if (e.StandardUncertainty is not { } rocking)
            return new Value(e.Estimate, null);
        var own = Corners.From(c => slope[c] * _own[c]);
        var masses = Corners.From(c => slope[c] * _masses[c]);
        var tilt = Corners.From(c => slope[c] * _tilt[c]);
        // Whether the pads were calibrated with the same masses is not known: erring together they add up in the total and cancel
        // in differences; erring apart the reverse. The worse is taken.
        var shared = Math.Max(masses.Sum * masses.Sum, masses.Dot(masses));
        var variance = rocking * rocking + own.Dot(own) + tilt.Dot(tilt) + shared;
        return new Value(e.Estimate, Math.Sqrt(variance), Freedom(variance, own, masses));
    }

    // Welch and Satterthwaite; rocking, tilt and masses count as well known.
    private double? Freedom(double variance, Corners own, Corners masses)
    {
        var few = Corners.From(c => Math.Pow(own[c] * own[c] + masses[c] * masses[c], 2) / _freedom[c]).Sum;
        return few > 0 ? Math.Max(1, variance * variance / few) : null;
    }
}
