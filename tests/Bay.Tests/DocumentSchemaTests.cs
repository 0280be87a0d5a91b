using System.Text.Json;
using Json.Schema;
using Shared;
using Shared.Rig;

namespace Bay.Tests;

/// <summary>The schemas of the documents that people write, against the documents' own examples (JSON Schema 2020-12).</summary>
public class DocumentSchemaTests
{
    private static readonly JsonSchema CarSchema = JsonSchema.FromFile(RepositoryRoot.File("docs", "cars", "car.schema.json"));
    private static readonly JsonDocumentOptions Lenient = new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true };

    [Fact]
    public void The_example_car_follows_its_schema_and_a_misspelt_field_does_not()
    {
        var text = File.ReadAllText(RepositoryRoot.File("docs", "cars", "heron.json"));
        Assert.True(Follows(text));
        Assert.False(Follows(text.Replace("\"motion_ratio\"", "\"motion_ratoi\"")));
        Assert.False(Follows(text.Replace("{ \"value\": 2450, \"u\": 3 }", "2450")));
    }

    [Theory]
    [InlineData("\"perch\": { \"pitch_mm_per_turn\": { \"value\": 2.0, \"u\": 0.01 }, \"up_turns_left\": 8, \"down_turns_left\": 8 }", true)]
    [InlineData("\"perch\": { \"pitch_mm_per_turn\": \"unknown\", \"up_turns_left\": 8, \"down_turns_left\": 8 }", true)]
    [InlineData("\"perch\": { \"can_turn\": false }", true)]
    [InlineData("\"perch\": { \"pitch_mm_per_turn\": { \"value\": 2.0, \"u\": 0.01 } }", false)]
    [InlineData("\"perch\": { \"pitch_mm_per_turn\": { \"value\": 2.0, \"u\": 0.01 }, \"up_turns_left\": 8 }", false)]
    [InlineData("\"perch\": { \"can_turn\": true, \"up_turns_left\": 8, \"down_turns_left\": 8 }", false)]
    public void Schema_and_program_want_the_same_of_a_perch(string perch, bool isEnough)
    {
        const string whole = "\"perch\": { \"pitch_mm_per_turn\": { \"value\": 2.0, \"u\": 0.01 }, \"up_turns_left\": 8, \"down_turns_left\": 8 }";
        var text = File.ReadAllText(RepositoryRoot.File("docs", "cars", "heron.json"));
        Assert.Contains(whole, text);
        text = text.Replace(whole, perch);
        Assert.Equal(isEnough, Follows(text));
        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllText(file, text);
            using var check = new ChildProcess("ScaleLink.Client", "scalelink.dll", "car", "check", file);
            Assert.True(check.WaitForExit(Wait.Patience));
            Assert.Equal(isEnough, check.ExitCode == 0);
        }
        finally
        {
            File.Delete(file);
        }
    }

    [Theory]
    [InlineData("\"setup\": { \"springs\": { \"rate_n_per_mm\": { \"front\": \"400 lb/in\", \"rear\": 62 } }, \"ballast\": { \"fitted_kg\": { \"battery box\": 5 } } }", true)]
    [InlineData("\"setup\": { \"tyres\": { \"set\": \"A\", \"pressure_cold_bar\": 1.5, \"size\": { \"front\": \"13 inch\" } } }", true)]
    [InlineData("\"setup\": { \"springs\": { \"rate\": 70 } }", false)]
    [InlineData("\"setup\": { \"springs\": { \"preload_mm\": 900 } }", false)]
    [InlineData("\"setup\": { \"springs\": { \"preload_mm\": \"5,5 mm\" } }", false)]
    [InlineData("\"setup\": { \"bars\": { \"step\": { \"LF\": 2 } } }", false)]
    [InlineData("\"setup\": { \"tyres\": { \"set\": 3 } }", false)]
    [InlineData("\"ride_height_marks\": { \"LF\": { \"behind_front_axle_mm\": 600, \"left_of_centre_mm\": 700 }, \"RF\": { \"behind_front_axle_mm\": 600, \"left_of_centre_mm\": -700 }, \"LR\": { \"behind_front_axle_mm\": 1900, \"left_of_centre_mm\": 700 }, \"RR\": { \"behind_front_axle_mm\": 1900, \"left_of_centre_mm\": -700 } }", true)]
    [InlineData("\"ride_height_marks\": { \"LF\": { \"behind_front_axle_mm\": 600, \"left_of_centre_mm\": 700 } }", false)]
    public void Schema_and_program_want_the_same_of_setup_and_marks(string block, bool isRight)
    {
        var text = File.ReadAllText(RepositoryRoot.File("docs", "cars", "heron.json")).TrimEnd()[..^1].TrimEnd() + $",\n{block}\n}}";
        Assert.Equal(isRight, Follows(text));
        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllText(file, text);
            using var check = new ChildProcess("ScaleLink.Client", "scalelink.dll", "car", "check", file);
            Assert.True(check.WaitForExit(Wait.Patience));
            Assert.Equal(isRight, check.ExitCode == 0);
        }
        finally
        {
            File.Delete(file);
        }
    }

    /// <summary>Whether a car file follows the schema. It is read once: a second reading of the same schema is refused.</summary>
    internal static bool Follows(string text)
    {
        using var document = JsonDocument.Parse(text, Lenient);
        return CarSchema.Evaluate(document.RootElement).IsValid;
    }
}
