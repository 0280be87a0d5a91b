using ScaleLink.Weighing.Cars;

namespace ScaleLink.Weighing.Statics;

/// <summary>
/// Heights of the body at one set of four places, told from those at another: a body is flat, so that its plane by least squares through the four
/// says them all. What no plane explains is told apart: a twist of the body, or a height that was misread.
/// </summary>
static class BodyPlane
{
    /// <summary>Four heights that lie further from a plane than this, mm at each, are worth a second look: tape and gauge read to about a millimetre. Common practice, no published source.</summary>
    public const double WorthALookMm = 1;

    /// <summary>Where ride heights are measured; at the wheels where nobody has said.</summary>
    public static Contacts MarksOf(CarModel car) => car.RideHeightMarks is { } marks ? new(marks.Map(m => m.X), marks.Map(m => m.Y)) : Contacts.Of(car);

    /// <summary>What to multiply four heights with to get those of their plane at other places.</summary>
    public static CornerMatrix Carry(Contacts from, Contacts to)
    {
        var (alongX, alongY, middle) = (from.SlopeAlongX, from.SlopeAlongY, new Corners(0.25, 0.25, 0.25, 0.25));
        var (x, y) = (from.X.Sum / 4, from.Y.Sum / 4);
        return CornerMatrix.FromRows(c => middle + (to.X[c] - x) * alongX + (to.Y[c] - y) * alongY);
    }

    /// <summary>Heights at the wheels, mm, from those at the marks; untouched where the car has none.</summary>
    public static Corners AtWheels(CarModel car, Corners heightsMm) => car.RideHeightMarks is null ? heightsMm : Carry(MarksOf(car), Contacts.Of(car)) * heightsMm;

    /// <summary>Changes of height at the marks, from those at the wheels; untouched where the car has none.</summary>
    public static CornerMatrix AtMarks(CarModel car, CornerMatrix atWheels) => car.RideHeightMarks is null ? atWheels : Carry(Contacts.Of(car), MarksOf(car)) * atWheels;

    /// <summary>The same of one change and its covariance.</summary>
    public static (Corners Change, CornerMatrix Covariance) AtMarks(CarModel car, Corners change, CornerMatrix covariance)
    {
        if (car.RideHeightMarks is null)
            return (change, covariance);
        var carry = Carry(Contacts.Of(car), MarksOf(car));
        return (carry * change, carry * covariance * carry.Transposed);
    }

    /// <summary>How far four heights at the marks lie from their plane, mm at an average mark; positive where LF and RR are high.</summary>
    public static double TwistMm(CarModel car, Corners heightsMm) => MarksOf(car).WarpOf(heightsMm);
}
