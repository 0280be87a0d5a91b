using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Calibration;

namespace Client.Tests.Calibration;

public class MassFileTests
{
    [Fact]
    public void Every_way_to_know_a_mass()
    {
        var masses = MassFile.Parse(["# at hand", "", "20 A, 20, M1", "50 B, 50.003, U 0.002", "cal 7, 20.0012, U 0.0006 k 3", "plate, 25, within 0.1, gym", "bar, 7.5, ± 0.05", "drum, 60 l, within 0.2", "can, 20 l at 12.5 °C, within 0.05", "disc, 45 lb, +-0.1"]);
        Assert.Equal(new KnownMass { Label = "20 A", Kg = 20, WeightClass = "M1" }, masses[0]);
        Assert.Equal(new KnownMass { Label = "50 B", Kg = 50.003, Certified = new CertifiedMass { ExpandedUncertaintyKg = 0.002 } }, masses[1]);
        Assert.Equal(new KnownMass { Label = "cal 7", Kg = 20.0012, Certified = new CertifiedMass { ExpandedUncertaintyKg = 0.0006, CoverageFactor = 3 } }, masses[2]);
        Assert.Equal(new KnownMass { Label = "plate", Kg = 25, PlusMinus = new PlusMinus { Kg = 0.1 }, Lot = "gym" }, masses[3]);
        // A plus-minus is 1.96 standard uncertainties (JCGM 100:2008, table G.1), never a limit.
        Assert.Equal((0.05, 1.96), (masses[4].Certified.ExpandedUncertaintyKg, Math.Round(masses[4].Certified.CoverageFactor, 3)));
        Assert.Equal(0.1 * 0.45359237, masses[7].Certified.ExpandedUncertaintyKg);
        Assert.Equal(new WaterVolume { Litres = 60, PlusMinusLitres = 0.2 }, masses[5].Water);
        Assert.Equal(new WaterVolume { Litres = 20, PlusMinusLitres = 0.05, TemperatureC = 12.5 }, masses[6].Water);
    }

    [Fact]
    public void A_file_in_pounds()
    {
        // 1 lb = 0.45359237 kg exactly (international yard and pound agreement of 1959); limits in the unit of the mass.
        var masses = MassFile.Parse(["45 A, 45 lb, within 0.25", "50 B, 50.02 lb, U 0.01 k 2", "plate, 25, within 0.1"]);
        Assert.Equal((45 * 0.45359237, 0.25 * 0.45359237), (masses[0].Kg, masses[0].PlusMinus.Kg));
        Assert.Equal((50.02 * 0.45359237, 0.01 * 0.45359237), (masses[1].Kg, masses[1].Certified.ExpandedUncertaintyKg));
        Assert.Equal((25, 0.1), (masses[2].Kg, masses[2].PlusMinus.Kg));
    }

    [Theory]
    [InlineData("20 A, 20")]
    [InlineData("20 A, twenty, M1")]
    [InlineData("20 A, -20, M1")]
    [InlineData("20 A, 20, M9")]
    [InlineData("drum, 60 l, M1")]
    [InlineData("plate, 25 kg at 15 C, +-0.1")]
    [InlineData("drum, 60 l, +-0.2")]
    [InlineData(", 20, M1")]
    [InlineData("20 A, 44 lb, M1")]
    public void A_line_that_is_not_understood_is_named(string line)
    {
        var trouble = Assert.Throws<ClientException>(() => MassFile.Parse(["# masses", line])).Diagnostic;
        Assert.Equal("SL-448", trouble.Code);
        Assert.Contains("Line 2", trouble.Message);
    }

    [Fact]
    public void An_empty_list_and_a_missing_file_are_told_apart()
    {
        Assert.Equal("SL-448", Assert.Throws<ClientException>(() => MassFile.Parse(["# nothing"])).Diagnostic.Code);
        Assert.Equal("SL-440", Assert.Throws<ClientException>(() => MassFile.Load("/nowhere/masses.csv")).Diagnostic.Code);
    }

    [Fact]
    public void Loads_by_their_labels()
    {
        Assert.Equal(new LoadStack { Masses = { "20 A", "20 B" } }, StackText.Parse("20 A + 20 B"));
        Assert.Equal(new LoadStack { Masses = { "20 A" }, Ballast = { "ballast 1", "ballast 2" } }, StackText.Parse("20 A on ballast 1+ballast 2"));
        Assert.Equal("SL-449", Assert.Throws<ClientException>(() => StackText.Parse(" + ")).Diagnostic.Code);
        Assert.Equal("20 A on ballast 1", StackText.Of(StackText.Parse("20 A on ballast 1")));
    }

    [Fact]
    public void All_lines_that_are_not_understood_are_named_at_once()
    {
        var refused = Assert.Throws<ClientException>(() => MassFile.Parse(["20 A, 20, M1", "twenty", "# a remark", "50 B, fifty, M1"])).Diagnostic;
        Assert.Equal("Lines 2, 4 of the masses are not understood: \"twenty\", \"50 B, fifty, M1\".", refused.Message.ToString());
    }
}
