using ScaleLink.Weighing.Statics;

namespace ScaleLink.Weighing.Patch;

/// <summary>What surveyed heights do to the loads of a car, and how well that is known.</summary>
static class HeightEffect
{
    /// <summary>Change of the loads, kg, and its covariance, kg²: by the survey's heights, and by every doubt of the car, each on its own.</summary>
    public static (Corners LoadsKg, CornerMatrix Covariance) Of(CarStatics statics, PatchSurvey survey, Func<CarStatics, Func<Corners, Corners>> effect)
    {
        var heights = survey.HeightsMm;
        var perMm = CornerMatrix.FromColumns(c => effect(statics)(default(Corners).With(c, 1)));
        var spread = perMm * survey.Covariance * perMm.Transposed;
        foreach (var doubt in ModelDoubt.Of(statics.Car))
        {
            var half = doubt.PerStep / 2 * (effect(statics.WithDoubt(doubt.Upper))(heights) - effect(statics.WithDoubt(doubt.Lower))(heights));
            spread += CornerMatrix.Outer(half, half);
        }

        return (effect(statics)(heights), spread);
    }
}
