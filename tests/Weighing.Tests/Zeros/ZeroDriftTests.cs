using ScaleLink.Weighing.Zeros;

namespace Weighing.Tests.Zeros;

public class ZeroDriftTests
{
    [Fact]
    public void Zeros_that_follow_the_temperature_are_found_out()
    {
        // 0.1 kg per kelvin; OIML R 76-1:2006, 3.9.2.3 allows e = 0.2 kg in 5 K, 0.04 kg per kelvin.
        var result = ZeroDrift.Judge(Zeros((day, kelvin) => 0.1 * kelvin), 0.2);
        Assert.Equal(0.1, result.KgPerKelvin!.Value, 0.01);
        Assert.Contains("per kelvin", Assert.Single(result.Findings).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Zeros_that_walk_with_time_are_found_out_with_temperature_taken_out()
    {
        var result = ZeroDrift.Judge(Zeros((day, kelvin) => 0.9 * day + 0.02 * kelvin), 0.2);
        Assert.Equal(0.9, result.KgPerDay!.Value, 0.05);
        Assert.Equal(0.02, result.KgPerKelvin!.Value, 0.01);
        Assert.Contains("a day", Assert.Single(result.Findings).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Quiet_zeros_pass() => Assert.Empty(ZeroDrift.Judge(Zeros((_, _) => 0), 0.2).Findings);

    [Fact]
    public void A_few_zeros_within_minutes_say_nothing_of_drift()
    {
        var result = ZeroDrift.Judge([.. Enumerable.Range(0, 3).Select(i => new ZeroPoint(DateTimeOffset.UnixEpoch.AddMinutes(i), 0.1 * i, 20))], 0.2);
        Assert.Null(result.KgPerDay);
        Assert.Null(result.KgPerKelvin);
        Assert.Equal(0.2, result.SpreadKg, 1e-12);
        Assert.Equal(0, ZeroDrift.Judge([], 0.2).SpreadKg);
    }

    static List<ZeroPoint> Zeros(Func<double, double, double> kg)
    {
        var random = new Random(8);
        return [.. Enumerable.Range(0, 20).Select(i =>
        {
            double day = i / 4.0, kelvin = 5 * Math.Sin(2.1 * i);
            return new ZeroPoint(DateTimeOffset.UnixEpoch.AddDays(day), kg(day, kelvin) + 0.04 * (random.NextDouble() - 0.5), 20 + kelvin);
        })];
    }
}
