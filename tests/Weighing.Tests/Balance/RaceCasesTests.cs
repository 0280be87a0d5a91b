using ScaleLink.Measure;
using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Statics;
using Weighing.Tests.Cars;
using Weighing.Tests.Statics;

namespace Weighing.Tests.Balance;

/// <summary>Start and finish with each driver, and the class minimum, by hand arithmetic and by the tests' own physics.</summary>
public class RaceCasesTests
{
    static readonly FuelTank Tank = new(new(2000, 0, 300), new(0.75, 0.01), new(30, 1), new(50, 1), new(10, 1));
    static readonly Driver First = new("first", new(80, 0.3), new(1250, 300, 400), IsInCar: true);
    static readonly Driver Second = new("second", new(70, 0.3), new(1250, 300, 400), IsInCar: false);
    static readonly LoadSummary Weighed = new(Heron.Loads, CornerMatrix.Diagonal(Corners.Same(0.09)));

    static CarModel Car => Heron.Car with { Fuel = Tank, Drivers = [First, Second] };

    [Fact]
    public void Every_driver_starts_and_finishes_with_the_mass_that_arithmetic_says()
    {
        var cases = Of(Car);
        Assert.Equal([(FuelLevel.Start, "first"), (FuelLevel.Finish, "first"), (FuelLevel.Start, "second"), (FuelLevel.Finish, "second")], cases.Select(c => (c.Fuel, c.Driver!)));
        // 20 litres of 0.75 kg more or less than weighed; 70 kg instead of 80.
        Assert.Equal([1048 + 15.0, 1048 - 15.0, 1048 + 5.0, 1048 - 25.0], cases.Select(c => c.Loads.TotalKg.Estimate).Select(kg => Math.Round(kg, 9)));
        Assert.All(cases, c => Assert.Equal(4, c.Trades.Count));
        // Moments about the front axle: 1048 kg had 492 kg on an axle 2450 mm behind; -10 kg at 1250 mm, +15 kg at 2000 mm.
        Assert.Equal(100 * (1 - (492 - 10 * 1250 / 2450.0 + 15 * 2000 / 2450.0) / 1053), cases[2].Loads.FrontWeightPercent.Estimate, 0.05);
    }

    [Fact]
    public void The_uncertainty_counts_both_fillings_the_density_and_both_drivers()
    {
        // GUM (JCGM 100:2008) 5.1.2: four loads 4 x 0.3²; litres 0.75² (1² + 1²); density (20 x 0.01)²; two drivers 2 x 0.3².
        Assert.Equal(0.36 + 1.125 + 0.04 + 0.18, Math.Pow(Of(Car)[3].Loads.TotalKg.Uncertainty, 2), 1e-6);
        // The driver who was weighed is no uncertainty of its own.
        Assert.Equal(0.36 + 1.125 + 0.04, Math.Pow(Of(Car)[0].Loads.TotalKg.Uncertainty, 2), 1e-6);
    }

    [Fact]
    public void A_file_that_states_neither_has_no_cases_and_one_of_them_is_enough()
    {
        Assert.Empty(Of(Heron.Car));
        Assert.Equal([FuelLevel.Start, FuelLevel.Finish], Of(Heron.Car with { Fuel = Tank }).Select(c => c.Fuel));
        var alone = Of(Heron.Car with { Drivers = [First, Second] });
        Assert.All(alone, c => Assert.Equal(FuelLevel.AsWeighed, c.Fuel));
        Assert.Equal([1048.0, 1038.0], alone.Select(c => Math.Round(c.Loads.TotalKg.Estimate, 9)));
        // Nobody was in it: each driver comes on top.
        Assert.Equal([1128.0, 1118.0], Of(Heron.Car with { Drivers = [First with { IsInCar = false }, Second] }).Select(c => Math.Round(c.Loads.TotalKg.Estimate, 9)));
    }

    [Theory]
    // 1048 - 20 x 0.75 - 10; 1048 + 15 - 10; 1048 - 30 x 0.75 - 80; 1048 - 80.
    [InlineData(true, FuelLevel.Finish, 1023, "finish, second")]
    [InlineData(true, FuelLevel.Start, 1053, "start, second")]
    [InlineData(false, FuelLevel.Empty, 945.5, "empty tank, no driver")]
    [InlineData(false, FuelLevel.AsWeighed, 968, "no driver")]
    internal void The_class_weighs_what_its_rule_counts(bool withDriver, FuelLevel fuel, double kg, string state)
    {
        var car = Car with { Class = new(1000, 2, withDriver, fuel) };
        var standing = ClassMinimum.Of(new CarStatics(car, 1048), Weighed)!;
        Assert.Equal((state, 1000), (standing.Lightest, standing.MinimumKg));
        Assert.Equal(kg, standing.LightestKg.Estimate, 1e-9);
        Assert.Equal(kg - 1000, standing.MarginKg, 1e-9);
        // Normal quantile for 95 %: 1.96 (JCGM 100:2008, table G.1).
        Assert.Equal(2 + 1.96 * standing.LightestKg.Uncertainty, standing.GuardKg, 1e-3);
        Assert.Equal(standing.MissingKg - standing.SpareKg, standing.GuardKg - standing.MarginKg, 1e-9);
        Assert.Equal(0, standing.MissingKg * standing.SpareKg);
    }

    [Fact]
    public void Another_driver_and_a_burnt_tank_leave_a_least_energy_car_as_predicted()
    {
        var random = new Random(7902);
        for (var i = 0; i < 20; i++)
        {
            var bare = RandomCars.Next(random, bars: false);
            var car = With(bare, 30, 80);
            var model = RandomCars.ModelOf(car) with { Fuel = Tank, Drivers = [First, Second] };
            var weighed = new LoadSummary(car.Rest().Loads, default);
            var finish = RaceCases.Of(new CarStatics(model, weighed.Loads.Sum), weighed, 50)[3].Loads.Loads;
            var truth = With(bare, 10, 70).Rest().Loads;
            foreach (var corner in Corners.All)
                Assert.Equal(truth[corner], finish[corner], 0.1);
        }

        static EnergyCar With(EnergyCar car, double litres, double driverKg) => car with { Sprung = [.. car.Sprung, (0.75 * litres, -2000, 0, 300), (driverKg, -1250, 300, 400)] };
    }

    static IReadOnlyList<RaceCase> Of(CarModel car) => RaceCases.Of(new CarStatics(car, 1048), Weighed, 50);
}
