using CarOnPads.Hosting;
using CarOnPads.Physics;

namespace CarOnPads.Tests;

public class DeterminismTests
{
    const string Work = """
        [
          { "at": 0.2, "do": "turn", "corner": "LF", "turns": 0.5 },
          { "at": 0.5, "do": "settle", "seconds": 1 },
          { "at": 0.9, "do": "garble", "corner": "RF", "bit_error_rate": 0.0005 },
          { "at": 1.1, "do": "brown-out", "corner": "RR" },
          { "at": 1.4, "do": "imperfection", "name": "clock-drift", "on": false },
          { "at": 1.6, "do": "lean", "corner": "LR", "kg": 15, "seconds": 0.5 },
          { "at": 1.8, "do": "drop", "corner": "LR", "share": 0.2 }
        ]
        """;

    [Fact]
    public void The_same_seed_and_the_same_commands_give_the_same_bytes() =>
        Assert.Equal(Bytes(seed: 42, beat: 0.004), Bytes(seed: 42, beat: 0.004));

    [Fact]
    public void How_late_the_host_is_changes_no_byte() =>
        Assert.Equal(Bytes(seed: 42, beat: 0.004), Bytes(seed: 42, beat: 0.71));

    [Fact]
    public void Another_seed_gives_another_bench() =>
        Assert.NotEqual(Bytes(seed: 42, beat: 0.004)[0], Bytes(seed: 43, beat: 0.004)[0]);

    static byte[][] Bytes(long seed, double beat)
    {
        using var bench = new Bench("default", 320, seed, raised: false);
        Scenario.Parse(Work).Schedule(bench.Bay, e => Assert.Fail(e.Message));
        for (var i = 1; i * beat < 3; i++)
            bench.Bay.AdvanceTo(i * beat);
        bench.Bay.AdvanceTo(3);
        bench.Bay.AdvanceTo(3.1);
        return [.. Enum.GetValues<Wheel>().Select(wheel => bench.Tap(wheel).Bytes[..20000])];
    }
}
