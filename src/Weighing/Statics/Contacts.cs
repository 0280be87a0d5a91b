using ScaleLink.Weighing.Cars;

namespace ScaleLink.Weighing.Statics;

/// <summary>Where the four tyres touch their pads, mm, ISO 8855: x forward from the front axle, y left from the centreline.</summary>
readonly record struct Contacts(Corners X, Corners Y)
{
    /// <summary>Two straight axles on one centreline.</summary>
    public static Contacts FromAxles(double wheelbaseMm, double frontTrackMm, double rearTrackMm) => new(
        new(0, 0, -wheelbaseMm, -wheelbaseMm),
        new(frontTrackMm / 2, -frontTrackMm / 2, rearTrackMm / 2, -rearTrackMm / 2));

    /// <summary>Those of a car.</summary>
    public static Contacts Of(CarModel car) => FromAxles(car.WheelbaseMm.Estimate, car.FrontTrackMm.Estimate, car.RearTrackMm.Estimate);

    /// <summary>
    /// The one pattern of four loads that has no sum and no moment, so that statics alone cannot tell how much of it the car
    /// carries; also what four heights must have none of to lie in a plane. Positive at LF, squares sum to four:
    /// on a rectangle it is +1, -1, -1, +1.
    /// </summary>
    /// <exception cref="DiagnosticException">The contacts lie on one line.</exception>
    public Corners WarpPattern
    {
        get
        {
            var pattern = new Corners(
                Area(Corner.RF, Corner.LR, Corner.RR), -Area(Corner.LF, Corner.LR, Corner.RR),
                Area(Corner.LF, Corner.RF, Corner.RR), -Area(Corner.LF, Corner.RF, Corner.LR));
            var size = Math.Sqrt(pattern.Dot(pattern));
            if (!(size > 1e-6 && pattern.LF != 0))
                throw new DiagnosticException(new Diagnostic(CarCodes.Geometry, "The four contacts do not span an area.", "Check wheelbase and tracks."));
            return 2 * Math.Sign(pattern.LF) / size * pattern;
        }
    }

    /// <summary>What to multiply four heights with to get the slope of their best plane along x, per mm.</summary>
    public Corners SlopeAlongX => Gradient(X, Y);

    /// <summary>What to multiply four heights with to get the slope of their best plane along y, per mm.</summary>
    public Corners SlopeAlongY => Gradient(Y, X);

    /// <summary>How much of the warp pattern lies in four numbers, in their unit: the size at an average corner, with sign.</summary>
    public double WarpOf(in Corners values) => WarpPattern.Dot(values) / 4;

    // Least squares through four points: the coordinate asked for, freed of the mean and of the other coordinate.
    static Corners Gradient(Corners along, Corners other)
    {
        along -= Corners.Same(along.Sum / 4);
        other -= Corners.Same(other.Sum / 4);
        var free = along - along.Dot(other) / other.Dot(other) * other;
        return 1 / free.Dot(free) * free;
    }

    double Area(Corner a, Corner b, Corner c) => (X[b] - X[a]) * (Y[c] - Y[a]) - (X[c] - X[a]) * (Y[b] - Y[a]);
}
