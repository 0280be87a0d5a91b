using CarOnPads.Hosting;
using CarOnPads.Physics;
using CarOnPads.Runtime;

namespace CarOnPads.Tests.Control;

public class ScenarioTests
{
    [Fact]
    public void Commands_happen_at_their_times()
    {
        using var bench = new Bench(raised: false);
        Scenario.Parse("""[{"at":0.5,"do":"freeze","corner":"LF"},{"at":0.2,"do":"turn","corner":"RF","turns":1}]""")
            .Schedule(bench.Bay, e => Assert.Fail(e.Message));
        bench.Run(0.3);
        Assert.Equal(1, bench.Bay.Rig.Turns[Wheel.RF]);
        Assert.False(bench.Bay.Pad(Wheel.LF).Faults.Frozen);
        bench.Run(0.3);
        Assert.True(bench.Bay.Pad(Wheel.LF).Faults.Frozen);
    }

    [Theory]
    [InlineData("""{"at":1}""", "CP-106")]
    [InlineData("""[{"at":1,"do":"truth"},{"at":2,"do":"dance"}]""", "CP-202")]
    [InlineData("""[{"do":"truth"}]""", "CP-203")]
    [InlineData("""[{"at":-1,"do":"truth"}]""", "CP-203")]
    [InlineData("nonsense", "CP-106")]
    public void A_wrong_scenario_is_refused_before_anything_happens(string text, string code) =>
        Assert.Equal(code, Assert.Throws<SimulatorException>(() => Scenario.Parse(text)).Code);

    [Fact]
    public void The_refusal_says_which_entry_is_wrong()
    {
        var refusal = Assert.Throws<SimulatorException>(() => Scenario.Parse("""[{"at":1,"do":"truth"},{"at":2,"do":"dance"}]"""));
        Assert.Contains("entry 2", refusal.Message);
    }

    [Fact]
    public void A_missing_file_is_named() =>
        Assert.Equal("CP-106", Assert.Throws<SimulatorException>(() => Scenario.Read("/nowhere/work.json")).Code);
}
