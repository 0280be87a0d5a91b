using System.Text.Json;
using Json.Schema;
using Shared;

namespace Bay.Tests;

/// <summary>The schemas of the documents that people write, against the documents' own examples (JSON Schema 2020-12).</summary>
public class DocumentSchemaTests
{
    private static readonly JsonDocumentOptions Lenient = new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true };

    [Fact]
    public void The_example_car_follows_its_schema_and_a_misspelt_field_does_not()
    {
        var schema = JsonSchema.FromFile(RepositoryRoot.File("docs", "cars", "car.schema.json"));
        var text = File.ReadAllText(RepositoryRoot.File("docs", "cars", "heron.json"));
        Assert.True(Follows(schema, text));
        Assert.False(Follows(schema, text.Replace("\"motion_ratio\"", "\"motion_ratoi\"")));
        Assert.False(Follows(schema, text.Replace("{ \"value\": 2450, \"u\": 3 }", "2450")));
    }

    private static bool Follows(JsonSchema schema, string text)
    {
        using var document = JsonDocument.Parse(text, Lenient);
        return schema.Evaluate(document.RootElement).IsValid;
    }
}
