using ScaleLink.Weighing.Statics;

namespace ScaleLink.Weighing.Levelling;

/// <summary>What measured heights do to the loads of a car, and how well that is known.</summary>
static class HeightEffect
{
    /// <summary>Change of the loads, kg, and its covariance, kg²: by the height measurement's heights, and by every uncertainty of the car, each on its own.</summary>
    public static (Corners LoadsKg, CornerMatrix Covariance) Of(CarStatics statics, MeasuredHeights heightMeasurement, Func<CarStatics, Func<Corners, Corners>> effect)
    {
        var heights = heightMeasurement.HeightsMm;
        var perMm = CornerMatrix.FromColumns(c => effect(statics)(default(Corners).With(c, 1)));
        var spread = perMm * heightMeasurement.Covariance * perMm.Transposed;
        foreach (var uncertainty in ModelUncertainty.Of(statics.Car))
        {
            var half = uncertainty.PerStep / 2 * (effect(statics.WithUncertainty(uncertainty.Upper))(heights) - effect(statics.WithUncertainty(uncertainty.Lower))(heights));
            spread += CornerMatrix.Outer(half, half);
        }

        return (effect(statics)(heights), spread);
    }
}
