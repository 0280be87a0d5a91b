using System.Text;
using CsCheck;
using ScaleLink.Measure;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Cars.Files;
using Shared;

namespace Weighing.Tests.Cars.Files;

/// <summary>Car files. The format is the project's own; docs/car.md and its schema describe it.</summary>
public class CarFileTests
{
    static readonly string Text = File.ReadAllText(RepositoryRoot.File("docs", "cars", "heron.json"));

    [Fact]
    public void The_documents_example_is_a_car()
    {
        var read = CarFile.Read(Text);
        Assert.Empty(read.Mistakes);
        Assert.Equal("Heron", read.Car!.Name);
        Assert.Equal(new Stated(70, 3.5), read.Car.Suspension.RF.SpringRateNPerMm);
        Assert.Equal(0.125, read.Car.SmallestTurn);
        Assert.Empty(read.Car.Guesses());
    }

    [Fact]
    public void Every_mistake_is_listed_with_its_place_and_line()
    {
        var text = Text.Replace("\"wheelbase_mm\": { \"value\": 2450, \"u\": 3 }", "\"wheelbase_mm\": 2450")
            .Replace("\"motion_ratio\": { \"value\": 0.85, \"u\": 0.02 }", "\"motion_ratoi\": { \"value\": 0.85, \"u\": 0.02 }")
            .Replace("{ \"value\": 62, \"u_percent\": 5 }", "{ \"value\": 62 }");
        var mistakes = CarFile.Read(text).Mistakes;
        Assert.Equal(
            [("SL-506", "wheelbase_mm", 5), ("SL-514", "front.motion_ratio", 8), ("SL-513", "front.motion_ratoi", 11), ("SL-515", "rear.spring_rate_n_per_mm", 18)],
            mistakes.Select(m => (m.Code.Text, m.Where, m.Line!.Value)));
    }

    [Theory]
    [InlineData(256 * 1024, false)]
    [InlineData(256 * 1024 + 1, true)]
    public void A_file_beyond_256_kB_is_not_read(int bytes, bool isRefused)
    {
        var read = CarFile.Read(Text.PadRight(bytes - (Encoding.UTF8.GetByteCount(Text) - Text.Length)));
        Assert.Equal(isRefused, read.Car is null);
        Assert.Equal(isRefused ? ["SL-559"] : [], read.Mistakes.Select(m => m.Code.Text));
    }

    [Theory]
    [InlineData("He\\u001b[2Jron")]
    [InlineData("He\u202eron")]
    [InlineData("He\\nron")]
    public void A_name_shows_every_sign_of_it(string name)
    {
        var mistake = Assert.Single(CarFile.Read(Text.Replace("\"Heron\"", $"\"{name}\"")).Mistakes);
        Assert.Equal(("SL-579", "name"), (mistake.Code.Text, mistake.Where));
        Assert.DoesNotContain(mistake.ToString(), sign => char.IsControl(sign) || sign == '\u202e');
    }

    [Fact]
    public void A_name_can_be_written_in_any_script() => Assert.Empty(CarFile.Read(Text.Replace("\"Heron\"", "\"鷺 Ñandú 2\"")).Mistakes);

    [Fact]
    public void A_number_that_no_car_has_is_found_at_its_line()
    {
        var mistake = Assert.Single(CarFile.Read(Text.Replace("\"value\": 1480", "\"value\": 58.3")).Mistakes);
        Assert.Equal(("SL-501", "rear.track_mm", 17), (mistake.Code.Text, mistake.Where, mistake.Line!.Value));
    }

    [Fact]
    public void Unknown_rates_get_a_wide_guess_and_say_so()
    {
        var car = CarFile.Read(Text.Replace("\"tyre_rate_n_per_mm\": { \"value\": 220, \"u_percent\": 10 }", "\"tyre_rate_n_per_mm\": \"unknown\"")).Car!;
        Assert.Equal(["LF tyre rate", "RF tyre rate", "LR tyre rate", "RR tyre rate"], car.Guesses());
        Assert.True(car.Suspension.LF.TyreRateNPerMm.StandardUncertainty > 0.2 * car.Suspension.LF.TyreRateNPerMm.Estimate);
    }

    [Fact]
    public void Rates_whose_shared_uncertainty_nobody_states_are_taken_to_share_some()
    {
        // Heron: springs 5 %, nothing said of what they share: as much again. Tyres: stated.
        var car = CarFile.Read(Text).Car!;
        Assert.Equal((0.05, 0.05), (car.SharedSpringUncertainty, car.SharedTyreUncertainty));
        var exact = CarFile.Read(Text.Replace("\"shared_tyre_uncertainty_percent\": 5", "\"shared_tyre_uncertainty_percent\": 0, \"shared_spring_uncertainty_percent\": 0")).Car!;
        Assert.Equal((0, 0), (exact.SharedSpringUncertainty, exact.SharedTyreUncertainty));
    }

    [Fact]
    public void One_corner_may_differ_from_its_axle()
    {
        var car = CarFile.Read(Text.Replace("\"smallest_turn\"", "\"corners\": { \"RR\": { \"spring_rate_n_per_mm\": { \"value\": 66, \"u\": 3 } } },\n  \"smallest_turn\"")).Car!;
        Assert.Equal(66, car.Suspension.RR.SpringRateNPerMm.Estimate);
        Assert.Equal(62, car.Suspension.LR.SpringRateNPerMm.Estimate);
        Assert.Equal(car.Suspension.LR.TyreRateNPerMm, car.Suspension.RR.TyreRateNPerMm);
    }

    [Theory]
    [InlineData("")]
    [InlineData("[]")]
    [InlineData("{ \"name\": ")]
    [InlineData("null")]
    public void What_is_no_JSON_object_is_said_to_be_none(string text) => Assert.Equal("SL-512", Assert.Single(CarFile.Read(text).Mistakes).Code);

    [Fact]
    public void A_written_car_reads_back_the_same()
    {
        var stated = Gen.Select(Gen.Double[0.3, 1.2], Gen.Double[0, 0.1], Gen.Bool, (v, u, guess) => new Stated(v, u + (guess ? 0.01 : 0), guess));
        var limit = Gen.Select(Gen.Bool, Gen.Double[50, 150], (has, mm) => has ? mm : (double?)null);
        Seeded.Check(Gen.Select(stated, stated, limit, limit, Gen.Double[0, 9]), 100, drawn =>
        {
            var (front, rear, low, other, turns) = drawn;
            var car = Heron.Car
                .Change(Corner.LF, s => s with { MotionRatio = front, LowestRideHeightMm = low })
                .Change(Corner.RF, s => s with { LowestRideHeightMm = other })
                .Change(Corner.RR, s => s with { MotionRatio = rear, HighestRideHeightMm = other, Perch = s.Perch with { UpTurnsLeft = turns } });
            var read = CarFile.Read(CarFileText.Of(car));
            Assert.Empty(read.Mistakes);
            Assert.Equal(car.Suspension, read.Car!.Suspension);
            Assert.Equal(car.BallastStations, read.Car.BallastStations);
            IReadOnlyList<BallastStation> none = [];
            Assert.Equal(car.Drivers, read.Car.Drivers);
            IReadOnlyList<Driver> nobody = [];
            Assert.Equal(car with { BallastStations = none, Drivers = nobody }, read.Car with { BallastStations = none, Drivers = nobody });
        });
    }

    [Fact]
    public void Fuel_drivers_and_class_are_read_and_written_back()
    {
        var car = CarFile.Read(Text).Car!;
        Assert.Equal(new FuelTank(new(2150, 0, 330), new(0.745, 0.008), new(25, 0.5), new(45, 0.5), new(6, 1)), car.Fuel);
        Assert.Equal([new("first driver", new(80, 0.3), new(1375, 340, 450), true), new("second driver", new(71, 0.3), new(1355, 340, 440), false)], car.Drivers);
        Assert.Equal(new ClassRule(1015, 2, true, FuelLevel.Finish), car.Class);
        var again = CarFile.Read(CarFileText.Of(car)).Car!;
        Assert.Equal((car.Fuel, car.Class), (again.Fuel, again.Class));
        Assert.Equal(car.Drivers, again.Drivers);
        Assert.Equal(FuelTank.Petrol, CarFile.Read(Text.Replace("\"kg_per_litre\": { \"value\": 0.745, \"u\": 0.008 },", "")).Car!.Fuel!.KgPerLitre);
    }

    [Theory]
    [InlineData("\"value\": 0.745", "\"value\": 745", "SL-556", "fuel")]
    [InlineData("\"value\": 45", "\"value\": 1e999", "SL-556", "fuel")]
    [InlineData("\"value\": 45", "\"value\": 5", "SL-556", "fuel")]
    [InlineData("\"behind_front_axle_mm\": 2150", "\"behind_front_axle_mm\": 21500", "SL-556", "fuel")]
    [InlineData("{ \"value\": 25, \"u\": 0.5 }", "25", "SL-506", "fuel.weighed_litres")]
    [InlineData("\"value\": 71", "\"value\": 7.1", "SL-557", "drivers")]
    [InlineData("second driver", "First driver", "SL-557", "drivers")]
    [InlineData("\"height_mm\": 440", "\"height_mm\": 440, \"in_car\": true", "SL-557", "drivers")]
    [InlineData("\"name\": \"second driver\", ", "", "SL-514", "drivers[1].name")]
    [InlineData("\"kg\": 1015", "\"kg\": 10", "SL-558", "class_minimum")]
    [InlineData("\"fuel\": {", "\"fuel\": null, \"x\": {", "SL-515", "fuel")]
    [InlineData("\"fuel\": \"finish\"", "\"fuel\": \"half\"", "SL-515", "class_minimum.fuel")]
    [InlineData("\"with_driver\": true, ", "", "SL-514", "class_minimum.with_driver")]
    public void Fuel_drivers_and_class_that_cannot_be_are_found_in_their_place(string part, string instead, string code, string place)
    {
        Assert.Contains(part, Text);
        Assert.Contains(CarFile.Read(Text.Replace(part, instead)).Mistakes, m => (m.Code.Text, m.Where) == (code, place) && m.Line > 35);
    }

    [Fact]
    public void A_class_that_counts_what_the_file_does_not_state_is_refused()
    {
        var car = Heron.Car with { Class = new(1000, 0, true, FuelLevel.Finish) };
        Assert.Equal(["SL-558", "SL-558"], CarModelCheck.Mistakes(car).Select(m => m.Code.Text));
        Assert.Empty(CarModelCheck.Mistakes(car with { Class = new(1000, 0, false, FuelLevel.AsWeighed) }));
    }

    [Fact]
    public void Random_damage_never_throws() => Seeded.Check(Gen.Select(Gen.Int[0, Text.Length - 1], Gen.Char[' ', '~'], Gen.Int[0, 40]), 500, drawn =>
    {
        var (at, with, cut) = drawn;
        var damaged = Text[..at] + with + Text[Math.Min(Text.Length, at + cut)..];
        var read = CarFile.Read(damaged);
        Assert.Equal(read.Car is null, read.Mistakes.Count > 0);
    });
}
