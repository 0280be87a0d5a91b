using System.Text.Json;
using System.Text.Json.Nodes;
using ScaleLink.Weighing.SetupSheets;
using Shared;

namespace Weighing.Tests.SetupSheets;

/// <summary>The setup in the schema of the car file, against the fields that the program knows: names, places, kinds and ranges.</summary>
public class SheetSchemaTests
{
    static readonly string Path = RepositoryRoot.File("docs", "cars", "car.schema.json");

    [Fact]
    public void The_schema_of_the_car_file_has_the_fields_that_the_program_reads()
    {
        var schema = JsonNode.Parse(File.ReadAllText(Path))!;
        var wanted = Setup();
        if (Environment.GetEnvironmentVariable("SCALELINK_APPROVE") == "1")
        {
            // The file is laid out by hand: only what is generated is written anew, on one line for each field.
            var text = File.ReadAllText(Path);
            var begin = text.IndexOf("    \"setup\": {\n", StringComparison.Ordinal);
            var end = text.IndexOf("\n    },\n    \"corner\": {", StringComparison.Ordinal);
            Assert.True(begin > 0 && end > begin);
            File.WriteAllText(Path, $"{text[..begin]}    \"setup\": {Laid(wanted)}{text[(end + "\n    }".Length)..]}");
            schema = JsonNode.Parse(File.ReadAllText(Path))!;
        }

        Assert.True(JsonNode.DeepEquals(wanted, schema["$defs"]!["setup"]), "SCALELINK_APPROVE=1 writes the setup of docs/cars/car.schema.json anew; look at the difference.");
        Assert.Equal("#/$defs/setup", (string?)schema["properties"]!["setup"]!["$ref"]);
    }

    static JsonObject Setup()
    {
        var groups = new JsonObject();
        foreach (var group in SheetFields.All.GroupBy(f => f.Group))
        {
            var fields = new JsonObject();
            foreach (var field in group)
                fields[field.DocumentName] = Field(field);
            groups[group.Key] = new JsonObject { ["type"] = "object", ["additionalProperties"] = false, ["properties"] = fields };
        }

        return new() { ["type"] = "object", ["additionalProperties"] = false, ["properties"] = groups };
    }

    static JsonObject Field(SheetField field)
    {
        JsonObject Places(JsonObject places)
        {
            places["type"] = "object";
            return field.Scope == SheetScope.Named ? places : new JsonObject { ["anyOf"] = new JsonArray(Value(field), places) };
        }

        JsonObject Pattern(string names) => new() { ["additionalProperties"] = false, ["patternProperties"] = new JsonObject { [names] = Value(field) } };
        var schema = field.Scope switch
        {
            SheetScope.WholeCar => Value(field),
            SheetScope.Named => Places(new() { ["additionalProperties"] = Value(field) }),
            SheetScope.EachAxle => Places(Pattern("^(front|rear|all)$")),
            _ => Places(Pattern("^(LF|RF|LR|RR|front|rear|left|right|all)$")),
        };
        schema.Insert(0, "description", field.Words + ".");
        return schema;
    }

    static JsonObject Value(SheetField field) => field.Unit is null ? new() { ["type"] = "string", ["maxLength"] = 200 }
        : new() { ["anyOf"] = new JsonArray(new JsonObject { ["type"] = "number", ["minimum"] = field.Low, ["maximum"] = field.High }, new JsonObject { ["$ref"] = "#/$defs/withUnit" }) };

    static string Laid(JsonObject setup)
    {
        var flat = new JsonSerializerOptions { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
        var groups = setup["properties"]!.AsObject().Select(g => $"        \"{g.Key}\": {{\n          \"type\": \"object\",\n          \"additionalProperties\": false,\n          \"properties\": {{\n"
            + string.Join(",\n", g.Value!["properties"]!.AsObject().Select(f => $"            \"{f.Key}\": {f.Value!.ToJsonString(flat)}")) + "\n          }\n        }");
        return "{\n      \"type\": \"object\",\n      \"additionalProperties\": false,\n      \"properties\": {\n" + string.Join(",\n", groups) + "\n      }\n    }";
    }
}
