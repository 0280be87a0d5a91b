using ScaleLink.Measure;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Statics;

namespace Weighing.Tests.Cars;

public class CarModelCheckTests
{
    [Fact]
    public void The_demo_car_has_no_mistakes() => Assert.Empty(CarModelCheck.Mistakes(Heron.Car));

    [Fact]
    public void Every_mistake_is_listed_at_once()
    {
        var car = Heron.Car with
        {
            Name = " ",
            WheelbaseMm = Stated.Exactly(96.5),
            SmallestTurn = 0,
            SharedSpringUncertainty = -1,
            Targets = new() { CrossWeightPercent = 0.5, RideHeightToleranceMm = 0 },
            BallastStations = [new("floor", default, 5, 2), new("Floor", default, 0, 2)],
        };
        car = car.Change(Corner.RR, s => s with
        {
            SpringRateNPerMm = new(double.NaN, -1),
            MotionRatio = Stated.Exactly(0),
            LowestRideHeightMm = 80,
            HighestRideHeightMm = 60,
            Perch = s.Perch with { UpTurnsLeft = -1 },
        });

        var codes = CarModelCheck.Mistakes(car).Select(m => m.Code).ToList();

        Assert.Equal([CarCodes.Ballast, CarCodes.Ballast, CarCodes.Geometry, CarCodes.Height, CarCodes.MotionRatio, CarCodes.NameMissing,
            CarCodes.PerchPitch, CarCodes.Rate, CarCodes.Target, CarCodes.Target, CarCodes.ThreadRange, CarCodes.Uncertainty, CarCodes.Uncertainty],
            codes.OrderBy(Named, StringComparer.Ordinal));
        Assert.Equal(codes, Assert.Throws<DiagnosticException>(() => new CarStatics(car, 1000)).Diagnostics.Select(f => f.Code));
    }

    [Fact]
    public void A_guess_needs_a_uncertainty_and_is_named()
    {
        var car = Heron.Car.Change(Corner.LF, s => s with { TyreRateNPerMm = Stated.Guess(200, 80) });

        Assert.Equal(["LF tyre rate"], car.Guesses());
        Assert.Empty(CarModelCheck.Mistakes(car));
        Assert.Equal(CarCodes.Uncertainty, Assert.Single(CarModelCheck.Mistakes(car with { CgHeightMm = Stated.Guess(400, 0) })).Code);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-5)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_car_without_mass_is_refused(double kg) =>
        Assert.Equal(CarCodes.Loads, Assert.Throws<DiagnosticException>(() => new CarStatics(Heron.Car, kg)).Diagnostics[0].Code);

    static string Named(Code code) => typeof(CarCodes).GetFields().Single(f => (Code)f.GetValue(null)! == code).Name;
}
