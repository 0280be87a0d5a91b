using System.Text.Json;
using Client.Tests.Terminal;
using ScaleLink.Client;
using ScaleLink.Weighing.Cars.Files;
using Shared;

namespace Client.Tests.Commands;

/// <summary>Commands that need no daemon.</summary>
public sealed class OfflineCommandsTests : IDisposable
{
    private static readonly string Heron = RepositoryRoot.File("docs", "cars", "heron.json");
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scalelink-car-");

    [Fact]
    public async Task A_car_file_is_checked_and_shown()
    {
        Assert.Contains("good. Heron", await Run(0, ["car", "check", Heron]));
        Assert.Contains("cross weight %", await Run(0, ["car", "show", Heron, "--total", "1048"]));
        using var json = JsonDocument.Parse(await Run(0, ["car", "show", Heron, "--total", "1048", "--json"]));
        // Lifting one corner presses its own pad and the one across from it.
        Assert.True(json.RootElement.GetProperty("loads_kg_per_turn").GetProperty("LF").GetProperty("LF").GetDouble() > 0);
    }

    [Fact]
    public async Task Mistakes_are_told_with_file_and_line()
    {
        var path = File("bad.json", System.IO.File.ReadAllText(Heron).Replace("\"value\": 1480", "\"value\": 58.3"));
        var text = await Run(2, ["car", "check", path]);
        Assert.Contains($"{path}:17: The rear track is 58.3 mm.", text);
        Assert.Contains("1 to correct.", text);
        Assert.Contains("SL-440", await Run(2, ["car", "check", Path.Combine(_folder.FullName, "none.json")]));
    }

    [Fact]
    public async Task An_interview_makes_a_car_and_guesses_what_nobody_knows()
    {
        var path = Path.Combine(_folder.FullName, "new.json");
        string[] answers = ["Heron", "two metres", "2450", "1500", "1480 +-5", "70", "0.85 +- 0.02", "", "2", "6", "6", "14", "62", "0.92", "", "2", "6", "6", "0", "", "0.125", ""];
        var text = await Run(0, ["car", "new", path], string.Join('\n', answers) + '\n');
        Assert.Contains("is no number", text);
        Assert.Contains("LF tyre rate", text);
        var car = CarFile.Read(System.IO.File.ReadAllText(path)).Car!;
        // An interval of 95 % is 1.96 standard uncertainties wide to either side (JCGM 100:2008, table G.1).
        Assert.Equal((1480, 2.551), (car.RearTrackMm.Estimate, car.RearTrackMm.StandardUncertainty));
        Assert.NotNull(car.FrontBar);
        Assert.Null(car.RearBar);
        Assert.True(car.CgHeightMm.Assumed);
        Assert.Contains("SL-446", await Run(2, ["car", "new", path], ""));
        Assert.Contains("SL-447", await Run(1, ["car", "new", Path.Combine(_folder.FullName, "short.json")], "Heron\n2450"));
    }

    [Fact]
    public async Task What_if_is_answered_in_words_and_as_json()
    {
        var example = System.IO.File.ReadAllText(RepositoryRoot.File("docs", "whatif.md")).Split("```json\n")[1].Split("```")[0].Replace("cars/heron.json", Heron);
        var path = File("question.json", example);
        var text = await Run(0, ["whatif", path]);
        foreach (var part in new[] { "Now:", "Then:", "Plan:", "equal front loads", "ballast:", "Lightest state (dry tank)", "finish, second driver", "above the ground", "Not approved for trade" })
            Assert.Contains(part, text);
        using var json = JsonDocument.Parse(await Run(0, ["whatif", path, "--json"]));
        Assert.True(json.RootElement.GetProperty("plan").GetProperty("reaches").GetBoolean());
        Assert.True(json.RootElement.GetProperty("then").GetProperty("cross_weight_percent").GetProperty("expanded_uncertainty").GetDouble() > 0);
        Assert.Equal("second driver", json.RootElement.GetProperty("cases")[3].GetProperty("driver").GetString());
        Assert.Contains("SL-513", await Run(2, ["whatif", File("bad.json", example.Replace("\"turns\"", "\"turms\""))]));
    }

    [Theory]
    [InlineData("work-session", "turn", "XX", "1")]
    [InlineData("work-session", "turn", "RF")]
    [InlineData("patch", "shims", "thin")]
    public async Task Words_that_are_no_turns_or_shims_are_refused_before_anybody_is_asked(params string[] arguments) =>
        Assert.NotEmpty(await Run(2, [.. arguments, "--daemon", "http://127.0.0.1:9"]));

    public void Dispose() => _folder.Delete(recursive: true);

    private static async Task<string> Run(int expected, string[] arguments, string typed = "")
    {
        var (output, error) = (new StringWriter(), new StringWriter());
        var code = await CommandLine.Run(arguments, Shells.Redirected(output, error) with { In = new StringReader(typed) }, TestContext.Current.CancellationToken);
        Assert.True(code == expected, $"{code}: {output}{error}");
        return $"{output}{error}";
    }

    private string File(string name, string text)
    {
        var path = Path.Combine(_folder.FullName, name);
        System.IO.File.WriteAllText(path, text);
        return path;
    }
}
