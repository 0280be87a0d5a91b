using System.Text.Json;
using System.Text.Json.Nodes;
using Client.Tests.Terminal;
using ScaleLink.Client;

namespace Client.Tests.Bay;

/// <summary>The zero of a pad's inclinometer by the guided command, with a crew that does what the lines say.</summary>
[Trait("needs", "bay")]
public sealed class InclinometerZeroOnABayTests(RealBay bay) : IClassFixture<RealBay>
{
    public static bool Can => RealBay.HasPseudoTerminals;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact(Skip = RealBay.WhyNot, SkipUnless = nameof(Can))]
    public async Task A_person_is_led_through_the_test_and_the_outcome_is_shown_kept_and_cleared()
    {
        await Do("""{"do":"pad-tilt","corner":"LR","pitch_deg":0.9,"roll_deg":-0.2}""");
        await Do("""{"do":"tilt-zero","corner":"LR","pitch_deg":0.4,"roll_deg":0.25}""");
        await bay.Zero();
        Assert.Contains("LR SLP-1003 inclinometer zero never tested", (await bay.Run("patch", "inclinometer-zero")).Output);
        Assert.Contains("one of --read, --abandon and --clear", (await bay.Run("patch", "inclinometer-zero", "--clear")).Error);

        // Leaves after the first reading; then goes on with it. Answers a reading of a pad that was not turned.
        var (code, output) = await Guided([], "", "q");
        Assert.Equal(1, code);
        Assert.Contains("Caution: The car is off the pads", output);
        Assert.Contains("1 of 4: put the pad down empty on firm ground", output);
        Assert.Contains("The test stays open", output);
        var error = new StringWriter();
        (code, output) = await Guided(["--json"], error, "", "n", "turn", "turn", "turn");
        Assert.Equal(0, code);
        Assert.Contains("It goes on after reading 1.", error.ToString());
        Assert.Matches(@"The pad reads the same as before.* \(SL-549\)", error.ToString());
        Assert.Contains("Was it turned by half a turn?", error.ToString());

        var zero = JsonDocument.Parse(output).RootElement.GetProperty("zero");
        // Truth plus the simulator's own mounting error of up to 0.05 degree.
        Assert.Equal(0.4, zero.GetProperty("pitch_deg").GetProperty("estimate").GetDouble(), 0.08);
        Assert.Equal(0.25, zero.GetProperty("roll_deg").GetProperty("estimate").GetDouble(), 0.08);
        Assert.Equal("crew", zero.GetProperty("who").GetString());
        var patch = (await bay.Run("patch")).Output;
        Assert.Contains("LF tilts", patch);
        Assert.Matches(@"LR tilts .*; inclinometer zero pitch \+0\.\d+° ± 0\.\d+°, roll \+0\.\d+° ± 0\.\d+°, tested \d{4}-\d\d-\d\d \d\d:\d\d \+05:30 by crew", patch);
        Assert.Contains("never tested", patch);
        Assert.Contains("LR SLP-1003 inclinometer zero never tested", (await bay.Run("patch", "inclinometer-zero", "LR", "--clear", "--who", "crew")).Output);
        Assert.Contains("SL-555", (await bay.Run("patch", "inclinometer-zero", "LR", "--abandon")).Error);
    }

    private Task<(int Code, string Output)> Guided(string[] more, params string[] answers) => Guided(more, new StringWriter(), answers);

    private async Task<(int Code, string Output)> Guided(string[] more, StringWriter error, params string[] answers)
    {
        var output = new StringWriter();
        var shell = Shells.Redirected(output, error) with { In = new Crew(this, answers) };
        var code = await CommandLine.Run(["--daemon", bay.Address, "patch", "inclinometer-zero", "LR", "--who", "crew", .. more], shell, Cancel);
        return (code, output.ToString());
    }

    private async Task Do(string command) => await Task.Delay(await bay.Bay.Car.Do((JsonObject)JsonNode.Parse(command)!, Cancel), Cancel);

    /// <summary>Types one answer after the other; "turn" turns the pad round before it presses Enter.</summary>
    private sealed class Crew(InclinometerZeroOnABayTests test, string[] answers) : TextReader
    {
        private readonly Queue<string> _answers = new(answers);

        public override string? ReadLine()
        {
            if (!_answers.TryDequeue(out var answer))
                return null;
            if (answer != "turn")
                return answer;
            test.Do("""{"do":"turn-pad","corner":"LR"}""").GetAwaiter().GetResult();
            return "";
        }
    }
}
