using ScaleLink.Measure;

namespace ScaleLink.Daemon.Bay;

/// <summary>
/// What the calibrations and the tilts of the four pads leave uncertain, carried into anything that is made of the four loads. Source of the
/// rules: JCGM 100:2008 (GUM) 5.1.2, 5.2.2 with its note 1 for what errs alike, F.1.2 and G.4.1.
/// </summary>
/// <param name="ofPad">By the calibration of each pad.</param>
/// <param name="tiltKg">By the tilt of each pad, kg, each inclinometer by itself.</param>
internal sealed class LoadUncertainty(Func<Corner, CalibrationUncertainty> ofPad, Func<Corner, double> tiltKg)
{
    private readonly Corners _own = Corners.From(c => double.Hypot(ofPad(c).OwnKg, ofPad(c).PlacingKg));
    private readonly Corners _alike = Corners.From(c => ofPad(c).AlikeKg);
    private readonly Corners _tilt = Corners.From(tiltKg);
    private readonly Corners _perhaps = Corners.From(c => ofPad(c).PerhapsAlikeKg);
    private readonly Corners _whole = Corners.From(c => ofPad(c).Kg);
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
        var perhaps = Corners.From(c => slope[c] * _perhaps[c]);
        var tilt = Corners.From(c => slope[c] * _tilt[c]);
        // Fully correlated, so added with their signs (5.2.2, note 1).
        var alike = slope.Dot(_alike);
        // Whether the pads were calibrated with the same masses, or come by one wrong constant, is not known: erring together they add up
        // in the total and cancel in differences; erring apart the reverse. The worse is taken.
        var worse = Math.Max(perhaps.Sum * perhaps.Sum, perhaps.Dot(perhaps));
        var variance = rocking * rocking + own.Dot(own) + tilt.Dot(tilt) + alike * alike + worse;
        return new Value(e.Estimate, Math.Sqrt(variance), Freedom(variance, slope));
    }

    // Welch and Satterthwaite; rocking and tilt count as well known. Few degrees are in what each pad has for itself only, which is
    // independent of the other pads as the formula needs it.
    private double? Freedom(double variance, Corners slope)
    {
        var few = Corners.From(c => Math.Pow(slope[c] * _whole[c], 4) / _freedom[c]).Sum;
        return few > 0 ? Math.Max(1, variance * variance / few) : null;
    }
}
