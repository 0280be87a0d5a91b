using ScaleLink.Weighing.Cars.Files;
using Shared;

namespace Weighing.Tests.Cars.Files;

/// <summary>Car files that were written before a field got its present name are still read, and the reader is told.</summary>
public class EarlierNameTests
{
    static readonly string Text = File.ReadAllText(RepositoryRoot.File("docs", "cars", "heron.json"));

    [Theory]
    [InlineData("roll_axis_height_mm", "lean_axis_height_mm")]
    [InlineData("shared_tyre_uncertainty_percent", "shared_tyre_doubt_percent")]
    public void A_field_under_its_earlier_name_is_read_and_told(string now, string before)
    {
        var read = CarFile.Read(Text.Replace($"\"{now}\"", $"\"{before}\""));
        Assert.Equal(CarFile.Read(Text).Car!.RollAxisHeightMm, read.Car!.RollAxisHeightMm);
        Assert.Equal(CarFile.Read(Text).Car!.SharedTyreUncertainty, read.Car.SharedTyreUncertainty);
        var told = Assert.Single(read.EarlierNames);
        Assert.Equal(("SL-519", before), (told.Code, told.Where));
        Assert.Contains(now, told.Message);
        Assert.NotNull(told.Line);
    }

    [Fact]
    public void So_are_the_shared_uncertainty_of_the_springs_and_the_difference_of_the_sides()
    {
        var read = CarFile.Read(Text.Replace("\"smallest_turn\"", "\"shared_spring_doubt_percent\": 3,\n  \"smallest_turn\"")
            .Replace("\"targets\": {", "\"targets\": { \"side_difference_mm\": 4,"));
        Assert.Equal(0.03, read.Car?.SharedSpringUncertainty);
        Assert.Equal(4, read.Car!.Targets.LeftRightDifferenceMm);
        Assert.Equal(["shared_spring_doubt_percent", "targets.side_difference_mm"], read.EarlierNames.Select(e => e.Where).Order());
    }

    [Fact]
    public void Beside_the_present_name_the_earlier_one_is_a_mistake() =>
        Assert.Contains(CarFile.Read(Text.Replace("\"smallest_turn\"", "\"lean_axis_height_mm\": 40,\n  \"smallest_turn\"")).Mistakes, m => m.Code == "SL-513");

    [Fact]
    public void A_car_is_written_with_the_present_names()
    {
        var written = CarFileText.Of(CarFile.Read(Text).Car!);
        Assert.Contains("roll_axis_height_mm", written);
        Assert.DoesNotContain("doubt", written);
        Assert.Empty(CarFile.Read(written).EarlierNames);
    }
}
