using CarOnPads.Physics;
using CarOnPads.Runtime;

namespace CarOnPads.Tests.Physics;

public class CarFileTests
{
    static readonly string s_heron = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Cars", "heron.json"));

    [Fact]
    public void The_demo_car_weighs_1048_kg_with_its_driver_and_starts_near_52_percent()
    {
        var rest = new Rig(Cars.Heron, Cars.G, 1).Motion;
        Assert.Equal(1048, Cars.Kilograms(rest).Sum, 1e-6);
        Assert.InRange(Cars.CrossWeight(rest), 51.8, 52.2);
        Assert.InRange((rest.Load[Wheel.LF] + rest.Load[Wheel.RF]) / rest.Load.Sum, 0.52, 0.54);
    }

    [Theory]
    [InlineData("\"mass_kg\": 968", "\"mass_kg\": 9.68", "CP-103")]
    [InlineData("\"motion_ratio\": 0.85", "\"motion_ratio\": 0", "CP-103")]
    [InlineData("\"unsprung_kg\": 28", "\"unsprung_kg\": 150", "CP-103")]
    [InlineData("\"mass_kg\": 968", "\"mass_lb\": 2134", "CP-102")]
    [InlineData("\"wheelbase_m\": 2.45,", "", "CP-102")]
    [InlineData("\"x_m\": -0.15,", "", "CP-102")]
    [InlineData("{", "", "CP-102")]
    public void A_wrong_car_is_refused(string part, string instead, string code)
    {
        Assert.Contains(part, s_heron);
        var refusal = Assert.Throws<SimulatorException>(() => CarFile.Parse(s_heron.Replace(part, instead)));
        Assert.Equal(code, refusal.Code);
    }

    [Fact]
    public void A_missing_file_is_named() =>
        Assert.Equal("CP-101", Assert.Throws<SimulatorException>(() => CarFile.Read("/nowhere/car.json")).Code);
}
