using System.Text.Json;
using ScaleLink.Weighing.Calibration.Masses;
using Weighing.Tests.Statistics;

namespace Weighing.Tests.Calibration.Masses;

public class WaterDensityTests
{
    [Fact]
    public void Density_by_temperature_as_published() =>
        // Values of another formula; the two agree within 0.003 kg/m3, as the reference says.
        Assert.All(ReferenceData.Json("water-density.json").GetProperty("table").EnumerateArray(), (JsonElement row) =>
            Assert.Equal(row.GetProperty("rho").GetDouble(), WaterDensity.KgPerM3(row.GetProperty("t").GetDouble()), 0.003));

    [Fact]
    public void Without_a_temperature_the_limits_hold_from_10_to_25_degrees_and_with_one_they_hold_a_kelvin()
    {
        double Off(double at, double taken) => Math.Abs(WaterDensity.KgPerM3(at) / WaterDensity.KgPerM3(taken) - 1);
        Assert.True(Off(10, WaterDensity.UsualC) <= WaterDensity.RelativeLimit(isTemperatureKnown: false));
        Assert.True(Off(25, WaterDensity.UsualC) <= WaterDensity.RelativeLimit(isTemperatureKnown: false));
        for (var celsius = 5.0; celsius <= 30; celsius++)
            Assert.True(Off(celsius + 1, celsius) < WaterDensity.RelativeLimit(isTemperatureKnown: true));
    }

    [Fact]
    public void A_stated_temperature_makes_the_mass_better_known()
    {
        var (usual, warm) = (KnownMass.Water("drum", 100, 0.1), KnownMass.Water("drum", 100, 0.1, 25));
        Assert.Equal(100 * 0.9970479 * 0.99895, warm.Kg, 1e-3);
        Assert.Equal(0.15 * warm.Kg / 100, warm.ToleranceKg, 1e-4);
        Assert.Equal(0.25 * usual.Kg / 100, usual.ToleranceKg, 1e-4);
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(41)]
    [InlineData(double.NaN)]
    public void A_temperature_outside_the_table_is_refused(double celsius) =>
        Assert.Equal(CalibrationCodes.MassWithoutTolerance, Assert.Throws<RefusedException>(() => KnownMass.Water("drum", 100, 0.1, celsius)).Diagnostic.Code);
}
