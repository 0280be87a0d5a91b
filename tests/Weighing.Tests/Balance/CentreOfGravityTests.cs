using ScaleLink.Measure;
using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Statics;
using Weighing.Tests.Cars;

namespace Weighing.Tests.Balance;

/// <summary>Examples of tests/reference/vehicle-dynamics.json; each item there names its book, page and status.</summary>
public class CentreOfGravityTests
{
    const double InchMm = 25.4;

    static CentreOfGravity Find(Corners loads, double wheelbaseMm, CornerMatrix covariance = default) =>
        CentreOfGravity.From(new LoadSummary(loads, covariance), PlainCar.With(Corners.Same(50), wheelbase: wheelbaseMm));

    [Fact]
    public void Textbook_car_from_wheel_forces()
    {
        // Jazar, Vehicle Dynamics, Example 40, p. 41: VERIFIED.
        var cg = Find(new(2000, 2000, 1800, 1800), 2340);

        Assert.Equal(1108.4, cg.BehindFrontAxleMm.Estimate, 0.05);
        Assert.Equal(0, cg.LeftOfCentreMm.Estimate, 1e-9);
    }

    [Theory]
    [InlineData(890, 9.81, 2350, 780, 2916.5, 1449, 0.05)] // Lecture slides after Jazar ch. 2, Example 1: VERIFIED (slides).
    [InlineData(1360, 9.8, 3050, 1780, 2774.6, 3889.0, 5.0)] // Halliday and Resnick, 1360 kg automobile: FROM-MEMORY, not evidence.
    public void Textbook_cars_from_their_centre_of_gravity(double kg, double g, double wheelbase, double behind, double frontNewton, double rearNewton, double within)
    {
        var loads = new CarStatics(PlainCar.With(Corners.Same(50), wheelbase: wheelbase), kg).Loads(new(kg, -behind, 0, 0));

        Assert.Equal(frontNewton, g * loads.LF, within);
        Assert.Equal(rearNewton, g * loads.RR, within);
    }

    [Fact]
    public void Handbook_example_of_weighing_on_three_points()
    {
        // FAA-H-8083-1, electronic calculator example: VERIFIED-SECONDARY. 340 lb of 2006 lb on the nose wheel, 78 in ahead.
        var cg = Find(new(170, 170, 833, 833), 78 * InchMm);

        Assert.Equal(-13.2, (cg.BehindFrontAxleMm.Estimate - 78 * InchMm) / InchMm, 0.05);
    }

    [Fact]
    public void Sideways_from_moments_about_the_centreline()
    {
        // Derived: y = [Tf/2 (LF - RF) + Tr/2 (LR - RR)] / W.
        var car = Heron.Car;
        var cg = CentreOfGravity.From(new LoadSummary(Heron.Loads, default), car);

        Assert.Equal((750 * (268 - 288) + 740 * (257.0 - 235)) / 1048, cg.LeftOfCentreMm.Estimate, 1e-9);
        Assert.Equal(492.0 / 1048 * 3, cg.BehindFrontAxleMm.Uncertainty, 1e-9);
    }

    [Fact]
    public void Uncertainty_of_loads_gives_the_closed_form()
    {
        // Derived: equal independent uncertainty u on four equal loads moves the centre by L u / W.
        var cg = Find(Corners.Same(250), 2400, CornerMatrix.Diagonal(Corners.Same(0.25)));

        Assert.Equal(2400 * 0.5 / 1000, cg.BehindFrontAxleMm.Uncertainty, 1e-9);
    }

    [Fact]
    public void Ride_rate_of_spring_and_tyre_in_series()
    {
        // Gillespie, ch. 5 example: FROM-MEMORY, self-consistent. 143 and 1198 lb/in give 127.75 lb/in.
        const double nPerMm = 0.175126835;
        var car = PlainCar.With(Corners.Same(143 * nPerMm), tyre: 1198 * nPerMm);

        Assert.Equal(127.75, 9.81 / Compliance.Of(car, 9.81).MmPerKg.LF.LF / nPerMm, 0.01);
    }
}
