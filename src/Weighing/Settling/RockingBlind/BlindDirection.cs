using ScaleLink.Weighing.Statics;

namespace ScaleLink.Weighing.Settling.RockingBlind;

/// <summary>
/// The combination p of the four loads that a rigid body's heave, pitch and roll leave alone: p = C n, with C the compliance at the
/// wheels and n the warp vector of the contacts. Derived from statics; exact where damping goes with stiffness.
/// </summary>
sealed class BlindDirection
{
    BlindDirection(Corners direction, LoadMatrix covariance, Corners warp) =>
        (Direction, Covariance, Warp) = (direction, covariance, warp);

    /// <summary>p, in any unit: only ratios matter.</summary>
    public Corners Direction { get; }

    /// <summary>n: the pattern of load changes that keeps the total and the centre of gravity; (1, -1, -1, 1) for a rectangle.</summary>
    public Corners Warp { get; }

    /// <summary>Relative standard uncertainty of each component of p, their common factor left out: it does not matter.</summary>
    public Corners RelativeUncertainty
    {
        get
        {
            var (covariance, share) = (Covariance, Direction.Map(p => 1 / p));
            return Corners.From(c => Math.Sqrt(covariance.VarianceOf(default(Corners).With(c, share[c]) - .25 * share)));
        }
    }

    /// <summary>The four ride rates relative to their mean: a spring of another rate than thought shows here.</summary>
    public Corners RideRateRatios
    {
        get
        {
            var (direction, warp) = (Direction, Warp);
            var rates = Corners.From(c => warp[c] / direction[c]);
            return 4 / rates.Sum * rates;
        }
    }

    internal LoadMatrix Covariance { get; }

    /// <summary>From the car's model.</summary>
    /// <param name="compliances">C n divided by n, corner by corner: 1 / ride rate without bars; any common unit.</param>
    /// <param name="relativeUncertainty">Relative standard uncertainty of each, 0.1 when the springs are known to 10 %.</param>
    /// <param name="warp">Null vector of (1, x, y) over the contacts.</param>
    /// <exception cref="ArgumentOutOfRangeException">A compliance or an uncertainty is not positive, or the warp vector carries a load.</exception>
    public static BlindDirection FromModel(Corners compliances, Corners relativeUncertainty, Corners warp)
    {
        foreach (var corner in Corners.All)
        {
            if (!(compliances[corner] > 0 && double.IsFinite(compliances[corner])))
                throw new ArgumentOutOfRangeException(nameof(compliances), compliances, "Every corner needs a positive compliance: give the ride rates.");
            if (!(relativeUncertainty[corner] > 0 && double.IsFinite(relativeUncertainty[corner])))
                throw new ArgumentOutOfRangeException(nameof(relativeUncertainty), relativeUncertainty, "Say how well each rate is known, for example 0.1.");
        }
        if (!(warp.LargestMagnitude() > 0) || Math.Abs(warp.Sum) > 1e-6 * warp.LargestMagnitude())
            throw new ArgumentOutOfRangeException(nameof(warp), warp, "A warp vector is not zero and its sum is: it must not change the total.");
        var direction = compliances.Times(warp);
        var spread = relativeUncertainty.Times(direction);
        return new(direction, LoadMatrix.OfDiagonal(spread.Times(spread)), warp);
    }

    /// <summary>
    /// From the statics of a car, bars included: its warp per load is p, and the uncertainties of the car model give its covariance,
    /// so that an uncertainty which all springs share weighs less than one of a single spring.
    /// </summary>
    public static BlindDirection Of(CarStatics statics)
    {
        // A car whose every number is stated exactly still is a model: two percent of each.
        var model = statics.WarpPerLoad.Map(p => 0.02 * p);
        return new(statics.WarpPerLoad, LoadMatrix.From(statics.WarpPerLoadCovariance() + CornerMatrix.Diagonal(model.Times(model))), statics.Warp);
    }

    /// <summary>Nothing is known but the wheels' places: equal rates, right to about 40 %.</summary>
    public static BlindDirection Unknown(Corners warp) => FromModel(Corners.Same(1), Corners.Same(.4), warp);

    internal BlindDirection Learned(Corners direction, LoadMatrix covariance) => new(direction, covariance, Warp);
}
