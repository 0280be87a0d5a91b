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
        // The CIPM's exponential approximation, value recomputed in the reference.
        var expected = Reference.GetProperty("air_density_approximation").GetProperty("at_20C_1013.25hPa_50pc").GetProperty("masscor_form");
        Assert.Equal(expected.GetDouble(), AirBuoyancy.DensityOfAir(1013.25, 50, 20), 4);
    }

    [Fact]
    public void Air_from_10_to_30_degrees_below_400_metres_lies_within_a_tenth_of_the_convention()
    {
        // Hydrostatics: 400 m of air of 1.2 kg/m3 take 47 hPa off; weather takes 15 hPa either way. Derived, no published source.
        Assert.InRange(AirBuoyancy.DensityOfAir(1013.25 - 47, 70, 30), 0.9 * AirBuoyancy.AirDensity, 1.1 * AirBuoyancy.AirDensity);
        Assert.InRange(AirBuoyancy.DensityOfAir(1013.25 + 15, 30, 10), 0.9 * AirBuoyancy.AirDensity, 1.1 * AirBuoyancy.AirDensity);
    }

    [Fact]
    public void Water_weighs_a_thousandth_less_in_air_than_its_volume_says()
    {
        // 1 - 1.2 (1/998.2 - 1/8000) = 0.99895: arithmetic on the definition of conventional mass, OIML D 28:2004.
        var drum = KnownMass.Water("drum", 100, 0.2);
        Assert.Equal(0.99895, drum.Kg / (0.1 * WaterDensity.KgPerM3(20)), 1e-5);
        Assert.Equal(drum.Kg * 1.00105, AirBuoyancy.TrueMass(drum.Kg, 998.2), 1e-3);
        // What is left is as for a weight: 0.12 / 998.2.
        Assert.Equal(0.120e-3, AirBuoyancy.RelativeLimit(drum), 1e-6);
    }

    [Fact]
    public void Buoyancy_is_parts_per_million_for_weights_and_stays_a_thousandth_for_water_as_it_was_once_recorded()
    {
        // 0.12 / 8000 = 15e-6; 1.2 (1/998.2 - 1/8000) = 1.052e-3 and 0.12 / 998.2 = 0.120e-3: arithmetic.
        Assert.Equal(15e-6, AirBuoyancy.RelativeLimit(KnownMass.OfClass("A", 20, WeightClass.M1)), 1e-9);
        Assert.Equal(1.172e-3, AirBuoyancy.RelativeLimit(new KnownMass("drum", 99.82, 0.35, 0.2, "water", 998.2, ByVolume: true)), 1e-6);
    }
}
