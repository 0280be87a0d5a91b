using CarOnPads.Cells;
using CarOnPads.Runtime;
using Shared;

namespace CarOnPads.Tests.Cells;

public class ImperfectionNamesTests
{
    [Fact]
    public void Every_name_finds_its_imperfection_and_stands_in_the_manual()
    {
        var manual = RepositoryRoot.Read("docs", "simulator.md");
        foreach (var imperfection in Enum.GetValues<Imperfection>())
        {
            var name = Imperfections.NameOf(imperfection);
            Assert.Equal(imperfection, Imperfections.Find(name));
            Assert.Contains($"| `{name}` |", manual);
        }
    }

    [Fact]
    public void A_list_switches_on_what_it_names_and_nothing_else()
    {
        var some = Imperfections.Parse("noise, latency-batches");
        Assert.Equal(["noise", "latency-batches"], some.On);
        Assert.Empty(Imperfections.Parse("none").On);
        Assert.Equal(Imperfections.Names, Imperfections.Parse("default").On);
    }

    [Fact]
    public void An_unknown_name_is_refused_with_the_known_ones()
    {
        var refusal = Assert.Throws<SimulatorException>(() => Imperfections.Parse("noise,rust"));
        Assert.Equal("CP-104", refusal.Code);
        Assert.Contains("hysteresis", refusal.Remedy);
    }
}
