using CarOnPads.Hosting;
using CarOnPads.Physics;
using Shared;

namespace CarOnPads.Tests.Cells;

/// <summary>The sun on one pad. First-order warming: T = S (1 - exp(-t / tau)), own independent physics.</summary>
public class SunTests
{
    [Fact]
    public void The_sun_warms_one_pad_by_an_exponential_and_moves_its_zero_by_its_coefficient()
    {
        using var bench = new Bench("temperature", hertz: 10);
        var pad = bench.Bay.Pad(Wheel.RF);
        var before = bench.Kilograms(wheel: Wheel.RF);
        var start = pad.TemperatureCelsius;
        bench.Do("""{"do":"sun","corner":"RF","kelvin":20}""");
        bench.Run(60);
        Assert.Equal(20 * (1 - Math.Exp(-0.1)), pad.TemperatureCelsius - start, 0.02);
        Assert.Equal(20, bench.Bay.Pad(Wheel.LF).TemperatureCelsius);
        Assert.Equal(pad.ZeroPerKelvin * (pad.TemperatureCelsius - start), bench.Kilograms(wheel: Wheel.RF) - before, 0.003);
    }

    [Fact]
    public void The_paddock_is_a_scenario_that_runs()
    {
        using var bench = new Bench(hertz: 10);
        Scenario.Read(RepositoryRoot.File("simulators", "CarOnPads", "Scenarios", "paddock.json")).Schedule(bench.Bay, e => Assert.Fail(e.Message));
        bench.Run(20);
        Assert.True(bench.Bay.Pad(Wheel.RF).TemperatureCelsius > 26.2);
        Assert.Equal(26, bench.Bay.Pad(Wheel.LF).TemperatureCelsius, 1e-9);
        Assert.Equal(0.3, bench.Bay.Pad(Wheel.LR).PitchDegrees);
    }
}
