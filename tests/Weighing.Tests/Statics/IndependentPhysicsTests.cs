using ScaleLink.Measure;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Statics;

namespace Weighing.Tests.Statics;

/// <summary>Two hundred drawn cars at rest by least potential energy, against one linear solve.</summary>
public class IndependentPhysicsTests
{
    // A load counts as right within 0.3 % of an average wheel.
    const double Share = 0.003;

    [Theory]
    [InlineData(false, 7101)]
    [InlineData(true, 7102)]
    public void Loads_after_turns_pad_heights_and_ballast(bool bars, int seed)
    {
        var random = new Random(seed);
        double worst = 0, worstHeight = 0, moved = 0;
        for (var trial = 0; trial < 100; trial++)
        {
            var car = RandomCars.Next(random, bars);
            var statics = new CarStatics(RandomCars.ModelOf(car), car.TotalKg);
            var before = car.Rest();
            var turns = Corners.From(_ => 6 * random.NextDouble() - 3);
            var pads = Corners.From(_ => 10 * random.NextDouble() - 5);
            var (kg, x, y, height) = (40 * random.NextDouble(), -car.Wheelbase * random.NextDouble(), 1000 * random.NextDouble() - 500, 200.0);
            var loaded = car with { Sprung = [.. car.Sprung, (kg, x, y, height)] };

            var truth = loaded.Rest(pads, turns);
            var turnsAlone = car.Rest(turns: turns);

            var predicted = statics.Loads(statics.StanceBehind(before.Loads), pads, turns) + statics.FromMass(kg, new(-x, y, height));
            var heights = statics.HeightsFromTurns(turns);
            foreach (var corner in Corners.All)
            {
                worst = Math.Max(worst, Math.Abs(predicted[corner] - truth.Loads[corner]) / (car.TotalKg / 4));
                worstHeight = Math.Max(worstHeight, Math.Abs(heights[corner] - (turnsAlone.Heights - before.Heights)[corner]));
            }
            moved += (truth.Loads - before.Loads).Map(Math.Abs).Sum / 400;
        }
        TestContext.Current.TestOutputHelper?.WriteLine($"worst load error {worst:P3} of total/4, worst height error {worstHeight:F3} mm");
        Assert.True(moved > 5, $"a corner moves {moved} kg on average");
        Assert.True(worst < Share, $"worst load error {worst:P3} of an average wheel");
        Assert.True(worstHeight < 0.1, $"worst height error {worstHeight} mm");
    }

    [Fact]
    public void Warp_per_load_stays_while_the_car_heaves_pitches_and_rolls()
    {
        var random = new Random(7103);
        for (var trial = 0; trial < 50; trial++)
        {
            var car = RandomCars.Next(random, bars: true);
            var statics = new CarStatics(RandomCars.ModelOf(car), car.TotalKg);
            var moved = car with { Sprung = [.. car.Sprung, (60, -1500 * random.NextDouble(), 700 * random.NextDouble(), 300)] };
            var (a, b) = (car.Rest().Loads, moved.Rest().Loads);

            Assert.True((b - a).Map(Math.Abs).Sum > 20);
            Assert.Equal(statics.WarpPerLoad.Dot(a), statics.WarpPerLoad.Dot(b), 0.02);
        }
    }

    [Fact]
    public void Uncertainty_about_a_spring_is_uncertainty_about_its_part_of_the_warp()
    {
        // Derived: without bars the part of a wheel is g (1 / tyre + 1 / (spring ratio²)); a share q of uncertainty about the
        // tyre alone leaves g q / tyre.
        var car = Cars.PlainCar.With(Corners.Same(50)).Change(Corner.RF, s => s with { TyreRateNPerMm = Stated.Within(200, 0.01) });
        var spread = new CarStatics(car, 1000).WarpPerLoadCovariance();

        Assert.Equal(CarStatics.StandardGravity * 0.01 / 200, Math.Sqrt(spread.RF.RF), 1e-6);
        Assert.Equal(0, spread.LF.LF, 1e-12);
    }

    [Fact]
    public void Loads_and_stance_are_inverse()
    {
        var statics = new CarStatics(Cars.Heron.Car, Cars.Heron.TotalKg);
        var pads = new Corners(1, -2, 3, 0.5);

        var stance = statics.StanceBehind(Cars.Heron.Loads, pads);

        foreach (var corner in Corners.All)
            Assert.Equal(Cars.Heron.Loads[corner], statics.Loads(stance, pads)[corner], 9);
    }
}
