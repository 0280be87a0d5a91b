using System.Text.Json;
using ScaleLink.Weighing.Pads;
using Weighing.Tests.Statistics;

namespace Weighing.Tests.Pads;

public class GravityTests
{
    static readonly JsonElement Reference = ReferenceData.Json("gravity-normal.json");

    [Fact]
    public void Normal_gravity_agrees_with_GRS80()
    {
        // H. Moritz, Geodetic Reference System 1980: published values to nine decimals, and values recomputed from it.
        foreach (var pair in Reference.GetProperty("check_values_published").GetProperty("GRS80").EnumerateArray())
            Assert.Equal(pair[1].GetDouble(), Gravity.At(pair[0].GetDouble()), 1e-9);
        foreach (var pair in Reference.GetProperty("check_values_recomputed").GetProperty("GRS80").EnumerateArray())
            Assert.Equal(pair[1].GetDouble(), Gravity.At(pair[0].GetDouble()), 1e-11);
    }

    [Fact]
    public void Gravity_falls_with_height()
    {
        // Free-air gradient 0.3086 mGal/m; over 1000 m within 0.001 of the second-order WGS 84 form.
        var fall = Gravity.At(45) - Gravity.At(45, 1000);
        Assert.Equal(308.6e-5, fall, 1e-9);
        var second = 3.0877e-6 * (1 - 0.00139 * 0.5) * 1000 - 7.2e-13 * 1e6;
        Assert.Equal(1, fall / second, 0.001);
    }

    [Fact]
    public void A_pad_carried_from_52_to_30_degrees_north_reads_light_unless_corrected()
    {
        // Derived from GRS80 in the reference file: ratio 0.998040575, 0.5878 kg on 300 kg.
        var example = Reference.GetProperty("why_it_matters").GetProperty("example_52N_to_30N");
        var (factor, u) = Place.On("north", 52, 0).CarriedTo(Place.On("south", 30, 0));
        Assert.Equal(example.GetProperty("ratio").GetDouble(), 1 / factor, 1e-8);
        Assert.Equal(example.GetProperty("error_kg_on_300_kg").GetDouble(), 300 / factor - 300, 1e-4);
        // Two places, each ± 5e-5 as the National Physical Laboratory states.
        Assert.Equal(5e-5 / Math.Sqrt(3) * Math.Sqrt(2), u, 1e-12);
    }

    [Fact]
    public void In_the_same_place_gravity_drops_out() =>
        Assert.Equal((1.0, 0.0), Place.On("workshop", 52, 0).CarriedTo(Place.On("workshop", 52, 0)));

    [Fact]
    public void There_is_no_latitude_of_91_degrees() => Assert.Throws<ArgumentOutOfRangeException>(() => Gravity.At(91));
}
