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

    private static bool Follows(string text)
    {
        using var document = JsonDocument.Parse(text, Lenient);
        return CarSchema.Evaluate(document.RootElement).IsValid;
    }
}
