using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Statics;

namespace ScaleLink.Weighing.WorkSessions.Planning;

/// <summary>Targets as the crew states them, at the marks where ride heights are measured, carried to the wheels, where plans are made.</summary>
static class TargetsAtWheels
{
    static readonly Corners Rake = new(-0.5, -0.5, 0.5, 0.5);
    static readonly Corners Side = new(0.5, -0.5, 0.5, -0.5);

    /// <summary>The targets at the wheels; the same ones for a car without marks.</summary>
    /// <param name="targets">At the marks.</param>
    /// <param name="car">Whose.</param>
    /// <param name="heightsMm">Measured at the marks; null: not measured.</param>
    public static CarTargets Of(CarTargets targets, CarModel car, Corners? heightsMm)
    {
        if (car.RideHeightMarks is null)
            return targets;
        var (marks, wheels) = (BodyPlane.MarksOf(car), Contacts.Of(car));
        var atWheels = targets with
        {
            RideHeightsMm = targets.RideHeightsMm is { } wanted ? BodyPlane.AtWheels(car, wanted) : null,
            RakeToleranceMm = targets.RakeToleranceMm * Math.Abs(Rake.Dot(wheels.X) / Rake.Dot(marks.X)),
        };
        if (heightsMm is not { } heights || targets is { RakeMm: null, LeftRightDifferenceMm: null })
            return atWheels;
        // The turn of the body that takes both misses away at the marks, about its two axes at once: marks need not be mirrored.
        var (rakeX, rakeY, sideX, sideY) = (Rake.Dot(marks.X), Rake.Dot(marks.Y), Side.Dot(marks.X), Side.Dot(marks.Y));
        var (rake, side) = (Rake.Dot(heights) - (targets.RakeMm ?? Rake.Dot(heights)), Side.Dot(heights) - (targets.LeftRightDifferenceMm ?? Side.Dot(heights)));
        var whole = rakeX * sideY - rakeY * sideX;
        var (alongX, alongY) = ((rake * sideY - side * rakeY) / whole, (side * rakeX - rake * sideX) / whole);
        var now = BodyPlane.AtWheels(car, heights);
        return atWheels with
        {
            RakeMm = targets.RakeMm is null ? null : Rake.Dot(now) - alongX * Rake.Dot(wheels.X) - alongY * Rake.Dot(wheels.Y),
            LeftRightDifferenceMm = targets.LeftRightDifferenceMm is null ? null : Side.Dot(now) - alongX * Side.Dot(wheels.X) - alongY * Side.Dot(wheels.Y),
        };
    }
}
