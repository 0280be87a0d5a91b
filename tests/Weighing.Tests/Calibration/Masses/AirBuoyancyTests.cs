using ScaleLink.Weighing.Calibration.Masses;
using Weighing.Tests.Statistics;

namespace Weighing.Tests.Calibration.Masses;

public class AirBuoyancyTests
{
    static readonly System.Text.Json.JsonElement Reference = ReferenceData.Json("oiml-r111-buoyancy.json");

    [Fact]
    public void True_mass_of_an_aluminium_weight_as_published()
    {
        // A balance manual's example: 2 g conventional, 2.7 g/cm3, 2.000589 g true.
        var check = Reference.GetProperty("mass_from_conventional_mass").GetProperty("check");
        var kg = AirBuoyancy.TrueMass(check.GetProperty("m_c_mg").GetDouble() * 1e-6, check.GetProperty("rho_kg_m3").GetDouble());
        Assert.Equal(check.GetProperty("m_mg_published").GetDouble(), kg * 1e6, 0.0005);
    }

    [Fact]
    public void Density_of_air()
    {
        // OIML R 111-1:2004 E.3, formula from memory; value recomputed there.
        var expected = Reference.GetProperty("air_density_approximation").GetProperty("at_20C_1013.25hPa_50pc").GetProperty("memory_form");
        Assert.Equal(expected.GetDouble(), AirBuoyancy.DensityOfAir(1013.25, 50, 20), 4);
    }

    [Fact]
    public void Buoyancy_is_parts_per_million_for_weights_and_a_thousandth_for_water_by_volume()
    {
        // 0.12 / 8000 = 15e-6; 1.2 (1/998.2 - 1/8000) = 1.052e-3 and 0.12 / 998.2 = 0.120e-3: arithmetic.
        Assert.Equal(15e-6, AirBuoyancy.RelativeLimit(KnownMass.OfClass("A", 20, WeightClass.M1)), 1e-9);
        Assert.Equal(1.172e-3, AirBuoyancy.RelativeLimit(KnownMass.Water("drum", 100, 0.2)), 1e-6);
    }
}
