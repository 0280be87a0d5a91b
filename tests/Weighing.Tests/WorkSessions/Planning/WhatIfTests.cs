using ScaleLink.Measure;
using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Questions;
using ScaleLink.Weighing.Statics;
using ScaleLink.Weighing.WorkSessions.Planning;
using Weighing.Tests.Cars;
using Weighing.Tests.Statics;

namespace Weighing.Tests.WorkSessions.Planning;

public class WhatIfTests
{
    [Fact]
    public void Everything_at_once_is_what_a_least_energy_car_does()
    {
        var random = new Random(8001);
        for (var i = 0; i < 30; i++)
        {
            var car = RandomCars.Next(random, bars: true);
            var question = new WhatIf
            {
                Turns = new(1.5, -0.5, 0, 2),
                PadsRaisedMm = new(0, 3, -2, 0),
                Masses = [new("driver", 75, new(1300, 350, 250))],
            };
            var truth = (car with { Sprung = [.. car.Sprung, (75, -1300, 350, 250)] }).Rest(question.PadsRaisedMm, question.Turns).Loads;

            var (loads, _) = question.Ask(new CarStatics(RandomCars.ModelOf(car), car.TotalKg), new LoadSummary(car.Rest().Loads, default));

            foreach (var corner in Corners.All)
                Assert.Equal(truth[corner], loads.Loads[corner], 0.003 * car.TotalKg / 4);
        }
    }

    [Fact]
    public void An_answer_that_leans_on_a_guessed_roll_axis_says_so_and_by_how_much()
    {
        var car = Heron.Car with { RollAxisHeightMm = Stated.Guess(50, 50) };
        var now = new LoadSummary(Heron.Loads, CornerMatrix.Diagonal(Corners.Same(0.01)));
        // A mass on one side: the body leans, and how high it leans about decides how much mass goes with it.
        var question = new WhatIf { Masses = [new("crate", 80, new(1300, 700, 250))] };
        Corners Then(double mm) => question.Ask(new CarStatics(car with { RollAxisHeightMm = new(mm, 0) }, Heron.TotalKg), now).Loads.Loads;
        var half = 0.5 * (Then(100) - Then(0));

        var lean = Assert.Single(GuessLean.Of(question, new CarStatics(car, Heron.TotalKg), now));
        Assert.Equal("roll axis height", lean.Name);
        Assert.Equal(Corners.All.ToArray().Max(c => Math.Abs(half[c])), lean.LargestLoadKg, 1e-6);
        Assert.Empty(GuessLean.Of(question, new CarStatics(Heron.Car, Heron.TotalKg), now));
        Assert.Empty(GuessLean.Of(new WhatIf(), new CarStatics(car, Heron.TotalKg), now));
    }

    [Fact]
    public void Uncertainty_about_the_car_grows_with_the_change()
    {
        var statics = new CarStatics(Heron.Car, Heron.TotalKg);
        var now = new LoadSummary(Heron.Loads, CornerMatrix.Diagonal(Corners.Same(0.01)));
        double Uncertainty(double turns) => new WhatIf { Turns = new(turns, 0, 0, 0) }.Ask(statics, now).Loads.CrossWeightPercent.Uncertainty;

        Assert.Equal(now.CrossWeightPercent.Uncertainty, Uncertainty(0), 1e-12);
        Assert.True(Uncertainty(4) > 2 * Uncertainty(1) && Uncertainty(1) > Uncertainty(0));
    }
}
