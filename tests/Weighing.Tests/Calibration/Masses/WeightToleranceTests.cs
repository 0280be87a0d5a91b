using ScaleLink.Weighing.Calibration.Masses;
using Weighing.Tests.Statistics;

namespace Weighing.Tests.Calibration.Masses;

public class WeightToleranceTests
{
    [Fact]
    public void Every_cell_agrees_with_OIML_R_111()
    {
        // OIML R 111-1:2004, Table 1.
        var rows = ReferenceData.Rows("oiml-r111-1-2004-mpe.csv");
        Assert.Equal(rows.Count, WeightTolerances.NominalKg.Count);
        foreach (var row in rows)
            foreach (var weightClass in Enum.GetValues<WeightClass>())
                Assert.Equal(ReferenceData.Number(row[$"{weightClass}_mg"]) * 1e-6,
                    WeightTolerances.ToleranceKg(ReferenceData.Number(row["nominal_kg"]), weightClass)!.Value, 1e-15);
    }

    [Fact]
    public void A_class_weight_carries_its_tolerance_as_a_rectangle()
    {
        // 20 kg in M1: 1 g (OIML R 111-1:2004, Table 1); rectangular by GUM 4.3.7.
        var mass = KnownMass.OfClass("A", 20, WeightClass.M1);
        Assert.Equal(0.001, mass.ToleranceKg, 1e-12);
        Assert.Equal(0.001 / Math.Sqrt(3), mass.StandardUncertaintyKg, 1e-12);
    }

    [Fact]
    public void A_nominal_value_outside_the_table_is_refused()
    {
        var refused = Assert.Throws<RefusedException>(() => KnownMass.OfClass("plate", 25, WeightClass.M1));
        Assert.Equal("SL-317", refused.Diagnostic.Code);
        Assert.Contains("25 kg in class M1", refused.Diagnostic.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, 0.1)]
    [InlineData(20, 0)]
    [InlineData(double.NaN, 0.1)]
    [InlineData(20, double.PositiveInfinity)]
    public void A_stated_mass_needs_a_value_and_limits(double kg, double plusMinus) =>
        Assert.Equal("SL-317", Assert.Throws<RefusedException>(() => KnownMass.Stated("plate", kg, plusMinus)).Diagnostic.Code);

    [Fact]
    public void Labels_name_one_mass_each()
    {
        var twice = Assert.Throws<RefusedException>(
            () => new MassSet([KnownMass.Stated("A", 20, 0.1), KnownMass.Stated("A", 10, 0.1)]));
        Assert.Equal("SL-316", twice.Diagnostic.Code);
        Assert.Equal("SL-316", Assert.Throws<RefusedException>(() => new MassSet([])["B"]).Diagnostic.Code);
    }
}
