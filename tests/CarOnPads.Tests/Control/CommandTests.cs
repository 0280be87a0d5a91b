using System.Text.Json;
using CarOnPads.Control;
using CarOnPads.Physics;
using Shared;

namespace CarOnPads.Tests.Control;

public class CommandTests
{
    public static TheoryData<string> Examples => [.. CommandTable.All.Select(command => command.Example)];

    [Theory]
    [MemberData(nameof(Examples))]
    public void Every_example_works_and_stands_in_the_manual(string example)
    {
        // Nobody carries or turns a pad under a car.
        using var bench = new Bench(raised: example.Contains("move-pads", StringComparison.Ordinal) || example.Contains("turn-pad", StringComparison.Ordinal));
        bench.Do(example);
        bench.Run(0.05);
        Assert.Contains(example, RepositoryRoot.Read("docs", "simulator.md"));
    }

    [Theory]
    [InlineData("truth", "CP-201")]
    [InlineData("[1]", "CP-201")]
    [InlineData("""{"do":"dance"}""", "CP-202")]
    [InlineData("""{"corner":"LF"}""", "CP-203")]
    [InlineData("""{"do":"turn","corner":"LF"}""", "CP-203")]
    [InlineData("""{"do":"turn","corner":"LF","turns":"one"}""", "CP-203")]
    [InlineData("""{"do":"turn","corner":"FL","turns":1}""", "CP-204")]
    [InlineData("""{"do":"jack","corners":["LF",3]}""", "CP-204")]
    [InlineData("""{"do":"turn","corner":"LF","turns":1000}""", "CP-205")]
    [InlineData("""{"do":"settle","by":"prayer"}""", "CP-205")]
    [InlineData("""{"do":"self-test","corner":"LF","fault":"mood"}""", "CP-205")]
    [InlineData("""{"do":"turn","corner":"LF","turns":1,"clicks":3}""", "CP-206")]
    [InlineData("""{"do":"imperfection","name":"rust","on":true}""", "CP-104")]
    [InlineData("""{"do":"move-pads","places":1}""", "CP-208")]
    [InlineData("""{"do":"turn-pad","corner":"LF"}""", "CP-208")]
    [InlineData("""{"do":"tilt-zero","corner":"LF","pitch_deg":6}""", "CP-205")]
    public void A_wrong_command_is_refused_with_a_code_and_a_way_out_and_changes_nothing(string command, string code)
    {
        using var bench = new Bench(raised: false);
        var before = bench.Bay.TrueLoads();
        using var reply = JsonDocument.Parse(Conversation.Answer(bench.Bay, command));
        Assert.False(reply.RootElement.GetProperty("ok").GetBoolean());
        Assert.Equal(code, reply.RootElement.GetProperty("code").GetString());
        Assert.NotEmpty(reply.RootElement.GetProperty("error").GetString()!);
        Assert.NotEmpty(reply.RootElement.GetProperty("remedy").GetString()!);
        Assert.Equal(before, bench.Bay.TrueLoads());
    }

    [Fact]
    public void The_truth_after_a_turn_is_where_the_car_will_stand()
    {
        using var bench = new Bench(raised: false);
        bench.Do("""{"do":"turn","corner":"LF","turns":2}""");
        using var told = JsonDocument.Parse(bench.Do("""{"do":"truth"}"""));
        Assert.False(told.RootElement.GetProperty("still").GetBoolean());
        bench.Run(20);
        using var come = JsonDocument.Parse(bench.Do("""{"do":"truth"}"""));
        Assert.True(come.RootElement.GetProperty("still").GetBoolean());
        foreach (var wheel in Enum.GetNames<Wheel>())
            Assert.Equal(
                told.RootElement.GetProperty("loads_kg").GetProperty(wheel).GetDouble(),
                come.RootElement.GetProperty("now_kg").GetProperty(wheel).GetDouble(), 2e-4);
        Assert.Equal(1048, told.RootElement.GetProperty("total_kg").GetDouble(), 1e-3);
    }

    [Fact]
    public void Masses_count_as_pad_load_but_not_as_car()
    {
        using var bench = new Bench(raised: true);
        bench.Do("""{"do":"mass","corner":"RF","kg":40}""");
        using var truth = JsonDocument.Parse(bench.Do("""{"do":"truth"}"""));
        Assert.Equal(40, truth.RootElement.GetProperty("loads_kg").GetProperty("RF").GetDouble());
        Assert.Equal(JsonValueKind.Null, truth.RootElement.GetProperty("cross_weight_pct").ValueKind);
    }

    [Fact]
    public void The_driver_weighs_what_the_car_file_says()
    {
        using var bench = new Bench(raised: false);
        bench.Do("""{"do":"driver","in":false}""");
        Assert.Equal(968, bench.Bay.TrueLoads().Sum, 1e-6);
        bench.Do("""{"do":"ballast","kg":10}""");
        Assert.Equal(978, bench.Bay.TrueLoads().Sum, 1e-6);
    }

    [Fact]
    public void Quit_asks_the_program_to_end()
    {
        using var bench = new Bench();
        Assert.False(bench.Bay.Ended);
        bench.Do("""{"do":"quit"}""");
        Assert.True(bench.Bay.Ended);
    }
}
