using ScaleLink.Measure;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Cars.Files;
using ScaleLink.Weighing.SetupSheets;
using Shared;

namespace Weighing.Tests.SetupSheets;

/// <summary>The setup sheet in a car file. The format is the project's own; docs/setup-sheet.md and the schema of the car file describe it.</summary>
public class CarSheetTests
{
    static readonly string Text = File.ReadAllText(RepositoryRoot.File("docs", "cars", "heron.json"));
    static readonly CarModel Heron = CarFile.Read(Text).Car!;

    [Fact]
    public void A_car_file_without_setup_is_a_sheet_of_what_it_states()
    {
        var sheet = CarSheet.Of(Heron);
        Assert.Equal(0, Heron.Setup.Count);
        Assert.Equal(new Corners(70, 70, 62, 62), sheet.Four("springs.rate"));
        Assert.Equal((14, 8), (sheet.Number("bars.rate", "front"), sheet.Number("bars.rate", "rear")));
        Assert.Equal((25, 80, 5), (sheet.Number("fuel.fill"), sheet.Number("seat.driver_mass"), sheet.Number("ballast.fitted", "battery box")));
    }

    [Fact]
    public void What_nobody_knows_is_no_setting() =>
        Assert.Null(CarSheet.Of(CarFile.Read(Text.Replace("\"spring_rate_n_per_mm\": { \"value\": 70, \"u_percent\": 5 }", "\"spring_rate_n_per_mm\": \"unknown\"")).Car!).Number("springs.rate", "LF"));

    [Fact]
    public void Every_field_at_every_place_goes_through_the_file_and_back()
    {
        var sheet = CarSheet.Of(Heron);
        foreach (var field in SheetFields.All)
            foreach (var place in field.Scope == SheetScope.Named ? ["floor", "box.2 \"left\""] : field.Places)
                if (sheet[new(field.Key, place)] is null)
                    sheet = sheet.With(new(field.Key, place), field.Unit is null ? SheetValue.Of($"{field.Words} {place}".Trim()) : SheetValue.Of(field.Low + (field.High - field.Low) / 3));
        var back = CarFile.Read(CarFileText.Of(Heron.SetUp(sheet)));
        Assert.Empty(back.Mistakes);
        Assert.Equal(sheet, back.Car!.Setup);
        Assert.Equal(sheet, CarSheet.Of(back.Car));
    }

    [Fact]
    public void A_sheet_sets_the_car_up_and_rates_keep_their_uncertainty_in_percent()
    {
        var car = Heron.SetUp(SheetContent.Empty.With(new("springs.rate", "LF"), SheetValue.Of(90)).With(new("bars.rate", "rear"), SheetValue.Of(12))
            .With(new("fuel.fill", ""), SheetValue.Of(40)).With(new("ballast.fitted", "passenger floor"), SheetValue.Of(12)));
        Assert.Equal((90, 4.5), (car.Suspension.LF.SpringRateNPerMm.Estimate, car.Suspension.LF.SpringRateNPerMm.StandardUncertainty));
        Assert.Equal(70, car.Suspension.RF.SpringRateNPerMm.Estimate);
        Assert.Equal((12, 40, 12), (car.RearBar!.RateNPerMm.Estimate, car.Fuel!.WeighedLitres.Estimate, car.BallastStations[0].FittedKg));
        Assert.Empty(CarModelCheck.Mistakes(car));
    }

    [Fact]
    public void Pounds_an_inch_are_welcome_and_one_value_serves_all_places()
    {
        var read = Read("\"springs\": { \"rate_n_per_mm\": { \"front\": \"400 lb/in\" }, \"free_length_mm\": \"7 in\" }, \"bars\": { \"step_steps\": 1 }");
        Assert.Equal(["SL-513"], read.Mistakes.Select(m => m.Code.Text));
        read = Read("\"springs\": { \"rate_n_per_mm\": { \"front\": \"400 lb/in\" }, \"free_length_mm\": \"7 in\" }, \"bars\": { \"step\": 2 }");
        Assert.Empty(read.Mistakes);
        Assert.Equal((177.8, 70.0507, 2), (Math.Round(read.Car!.Setup.Number("springs.free_length", "RR")!.Value, 9), Math.Round(read.Car.Setup.Number("springs.rate", "RF")!.Value, 4), read.Car.Setup.Number("bars.step", "rear")));
    }

    [Theory]
    [InlineData("\"springs\": { \"rate_n_per_mm\": { \"LF\": 90 } }", "SL-614", "setup.springs.rate_n_per_mm")]
    [InlineData("\"fuel\": { \"fill_l\": 40 }", "SL-614", "setup.fuel.fill_l")]
    [InlineData("\"springs\": { \"preload_mm\": { \"LF\": 900 } }", "SL-613", "setup.springs.preload_mm.LF")]
    [InlineData("\"springs\": { \"preload_mm\": { \"XF\": 9 } }", "SL-612", "setup.springs.preload_mm.XF")]
    [InlineData("\"springs\": { \"preload_mm\": \"5,5\" }", "SL-613", "setup.springs.preload_mm")]
    [InlineData("\"springs\": { \"preload_mm\": true }", "SL-613", "setup.springs.preload_mm")]
    [InlineData("\"springs\": { \"preload\": 3 }", "SL-513", "setup.springs.preload")]
    [InlineData("\"tyres\": { \"set\": 3 }", "SL-613", "setup.tyres.set")]
    [InlineData("\"sprigs\": { }", "SL-513", "setup.sprigs")]
    [InlineData("\"ballast\": { \"fitted_kg\": 3 }", "SL-613", "setup.ballast.fitted_kg")]
    public void A_mistake_in_the_setup_is_named_with_its_place(string setup, string code, string where)
    {
        var mistake = Assert.Single(Read(setup).Mistakes);
        Assert.Equal((code, where), (mistake.Code.Text, mistake.Where));
        Assert.NotNull(mistake.Line);
    }

    [Fact]
    public void A_difference_names_what_came_went_and_changed_in_the_order_of_the_sheet()
    {
        var before = SheetContent.Empty.With(new("tyres.set", ""), SheetValue.Of("A")).With(new("springs.rate", "RF"), SheetValue.Of(70)).With(new("fuel.fill", ""), SheetValue.Of(20));
        var after = before.With(new("springs.rate", "LF"), SheetValue.Of(70)).With(new("springs.rate", "RF"), SheetValue.Of(70 + 1e-12)).With(new("tyres.set", ""), SheetValue.Of("B")).With(new("fuel.fill", ""), null);
        Assert.Equal(["springs.rate.LF: -> 70", "tyres.set: A -> B", "fuel.fill: 20 ->"], SheetDifference.Of(before, after)
            .Select(d => $"{d.Slot}: {d.Before?.Number?.ToString() ?? d.Before?.Text} -> {d.After?.Number?.ToString() ?? d.After?.Text}".Replace(":  ->", ": ->").TrimEnd()));
        Assert.Empty(SheetDifference.Of(before, before));
    }

    static CarFile Read(string setup) => CarFile.Read(Text.TrimEnd()[..^1].TrimEnd() + $",\n  \"setup\": {{ {setup} }}\n}}");
}
