using ScaleLink.Weighing.Cars;

namespace ScaleLink.Weighing.Statics;

/// <summary>
/// One independent uncertainty about a car, as two cars on either side of the stated one. Results are propagated by recomputing
/// them for both (GUM, JCGM 100:2008, 5.1.3 note 2) instead of by derivatives on paper.
/// </summary>
sealed record ModelUncertainty(string Name, CarModel Lower, CarModel Upper, double PerStep)
{
    // A guess may be so wide that one standard uncertainty down would leave no spring at all.
    const double LargestShare = 0.4;

    /// <summary>Every uncertainty of the car; values stated exactly are left out.</summary>
    public static IReadOnlyList<ModelUncertainty> Of(CarModel car)
    {
        var values = NamedValues.Of(car).ToList();
        var uncertainties = values.Where(v => v.Value.StandardUncertainty > 0).Select(OfOne).ToList();
        AddShared("all spring rates", car.SharedSpringUncertainty, ValueKind.SpringRate, (s, by) => s with { SpringRateNPerMm = s.SpringRateNPerMm.Moved(by * s.SpringRateNPerMm.Estimate) });
        AddShared("all tyre rates", car.SharedTyreUncertainty, ValueKind.TyreRate, (s, by) => s with { TyreRateNPerMm = s.TyreRateNPerMm.Moved(by * s.TyreRateNPerMm.Estimate) });
        return uncertainties;

        void AddShared(string name, double share, ValueKind kind, Func<CornerSetup, double, CornerSetup> scale)
        {
            if (share <= 0)
                return;
            var step = Math.Min(share, LargestShare);
            uncertainties.Add(new(name, All(-step), All(step), share / step));

            CarModel All(double by) => Corners.All.ToArray().Aggregate(car, (c, corner) => c.Change(corner, s => scale(s, by)));
        }
    }

    /// <summary>Covariance, kg², that the uncertainties of the car give a change of the loads, kg.</summary>
    public static CornerMatrix SpreadOf(CarStatics statics, Func<CarStatics, Corners> change)
    {
        var spread = default(CornerMatrix);
        foreach (var uncertainty in Of(statics.Car))
        {
            var half = uncertainty.PerStep / 2 * (change(statics.WithUncertainty(uncertainty.Upper)) - change(statics.WithUncertainty(uncertainty.Lower)));
            spread += CornerMatrix.Outer(half, half);
        }

        return spread;
    }

    static ModelUncertainty OfOne(NamedValue value)
    {
        var step = value.Kind == ValueKind.Height
            ? value.Value.StandardUncertainty
            : Math.Min(value.Value.StandardUncertainty, LargestShare * value.Value.Estimate);
        return step > 0
            ? new(value.Name, value.Moved(-step), value.Moved(step), value.Value.StandardUncertainty / step)
            : new(value.Name, value.Moved(0), value.Moved(0), 0);
    }
}
