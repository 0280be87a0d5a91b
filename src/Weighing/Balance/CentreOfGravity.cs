using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Statics;

namespace ScaleLink.Weighing.Balance;

/// <summary>
/// Where the mass of the car is, from four loads on a level patch: a = L (rear loads) / W behind the front axle
/// (Jazar, Vehicle Dynamics, eq. 2.15 and 2.16); sideways from the moments about the centreline.
/// </summary>
/// <param name="BehindFrontAxleMm">mm.</param>
/// <param name="LeftOfCentreMm">mm.</param>
sealed record CentreOfGravity(Value BehindFrontAxleMm, Value LeftOfCentreMm)
{
    /// <summary>From loads on a level patch; the uncertainty counts loads, wheelbase and tracks.</summary>
    public static CentreOfGravity From(LoadSummary summary, CarModel car)
    {
        var contacts = Contacts.Of(car);
        var (loads, total) = (summary.Loads, summary.Loads.Sum);
        double x = contacts.X.Dot(loads) / total, y = contacts.Y.Dot(loads) / total;
        var fromLoadsX = summary.Covariance.VarianceOf(1 / total * (contacts.X - Corners.Same(x)));
        var fromLoadsY = summary.Covariance.VarianceOf(1 / total * (contacts.Y - Corners.Same(y)));
        var fromBase = (loads.LR + loads.RR) / total * car.WheelbaseMm.StandardUncertainty;
        var fromFront = (loads.LF - loads.RF) / total / 2 * car.FrontTrackMm.StandardUncertainty;
        var fromRear = (loads.LR - loads.RR) / total / 2 * car.RearTrackMm.StandardUncertainty;
        return new(
            new(-x, Math.Sqrt(fromLoadsX + fromBase * fromBase), summary.DegreesOfFreedom),
            new(y, Math.Sqrt(fromLoadsY + fromFront * fromFront + fromRear * fromRear), summary.DegreesOfFreedom));
    }
}
