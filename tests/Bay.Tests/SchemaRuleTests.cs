using System.Text.Json;
using System.Text.RegularExpressions;
using Json.Schema;
using Shared;

namespace Bay.Tests;

/// <summary>
/// The published schemas themselves, held against JSON Schema 2020-12: its meta-schema (https://json-schema.org/draft/2020-12/schema), its keywords
/// (Core, sections 8, 10 and 11; Validation, sections 6 to 9) and formats (Validation, section 7.3). Beyond that no payload may carry what no schema names.
/// </summary>
public class SchemaRuleTests
{
    public static TheoryData<string> Schemas =>
    [
        .. Directory.GetFiles(RepositoryRoot.File("proto", "mqtt", "v1"), "*.schema.json").Concat(Directory.GetFiles(RepositoryRoot.File("docs"), "*.schema.json", SearchOption.AllDirectories))
            .Select(file => Path.GetRelativePath(RepositoryRoot.File(), file)).Order(),
    ];

    [Theory]
    [MemberData(nameof(Schemas))]
    public void A_schema_follows_the_meta_schema_and_leaves_nothing_open(string file)
    {
        using var document = JsonDocument.Parse(File.ReadAllText(RepositoryRoot.File(file)));
        var result = MetaSchemas.Draft202012.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List, RequireFormatValidation = true });
        Assert.True(result.IsValid, JsonSerializer.Serialize(result.Details?.Where(d => d.Errors is not null)));
        Assert.Equal("https://json-schema.org/draft/2020-12/schema", document.RootElement.GetProperty("$schema").GetString());
        Assert.Empty(SchemaRules.Broken(document.RootElement));
    }

    [Theory]
    [InlineData("""{ "type": "object", "properties": { "a": true } }""", "closed")]
    [InlineData("""{ "properties": { "a": { "type": "objekt" } }, "type": "object", "additionalProperties": false }""", "type")]
    [InlineData("""{ "properties": { "a": true }, "additionalProperties": false }""", "type")]
    [InlineData("""{ "type": "object", "properties": { "a": { "minimun": 1 } }, "additionalProperties": false }""", "minimun")]
    [InlineData("""{ "type": "string", "format": "datetime" }""", "format")]
    [InlineData("""{ "type": "string", "pattern": "(" }""", "pattern")]
    [InlineData("""{ "type": "number", "minLength": 1 }""", "minLength")]
    [InlineData("""{ "type": "object", "properties": { "a": true }, "required": ["b"], "additionalProperties": false }""", "required")]
    [InlineData("""{ "type": "object", "properties": { "a": true }, "additionalProperties": false, "if": { "properties": { "a": { "const": 1 } } }, "then": { "maxProperties": 1 } }""", "if")]
    [InlineData("""{ "$ref": "#/$defs/none" }""", "$ref")]
    public void Each_rule_finds_what_breaks_it(string schema, string rule)
    {
        using var document = JsonDocument.Parse(schema);
        Assert.Contains(SchemaRules.Broken(document.RootElement), broken => broken.Contains(rule, StringComparison.Ordinal));
    }
}

/// <summary>What a strict reader asks of a schema beyond the meta-schema, which lets unknown keywords and open objects pass.</summary>
file static class SchemaRules
{
    private static readonly string[] Types = ["object", "array", "string", "number", "integer", "boolean", "null"];

    private static readonly string[] Formats =
    [
        "date-time", "date", "time", "duration", "email", "idn-email", "hostname", "idn-hostname", "ipv4", "ipv6", "uri", "uri-reference", "iri", "iri-reference", "uuid",
        "uri-template", "json-pointer", "relative-json-pointer", "regex",
    ];

    private static readonly string[] OfAnyType =
    [
        "$schema", "$id", "$anchor", "$dynamicRef", "$dynamicAnchor", "$ref", "$defs", "$comment", "$vocabulary", "type", "enum", "const", "allOf", "anyOf", "oneOf", "not", "if", "then", "else",
        "title", "description", "default", "deprecated", "readOnly", "writeOnly", "examples",
    ];

    private static readonly Dictionary<string, string[]> OfType = new()
    {
        ["object"] = ["properties", "patternProperties", "additionalProperties", "unevaluatedProperties", "propertyNames", "dependentSchemas", "dependentRequired", "required", "minProperties", "maxProperties"],
        ["array"] = ["items", "prefixItems", "contains", "minContains", "maxContains", "minItems", "maxItems", "uniqueItems", "unevaluatedItems"],
        ["string"] = ["minLength", "maxLength", "pattern", "format", "contentEncoding", "contentMediaType", "contentSchema"],
        ["number"] = ["minimum", "maximum", "exclusiveMinimum", "exclusiveMaximum", "multipleOf"],
    };

    // Applied to the same value as the schema in which they stand; the others are applied to a part of it.
    private static readonly string[] InPlace = ["if", "then", "else", "not", "allOf", "anyOf", "oneOf", "dependentSchemas"];

    private static readonly string[] One = ["if", "then", "else", "not", "additionalProperties", "unevaluatedProperties", "propertyNames", "items", "contains", "unevaluatedItems", "contentSchema"];

    private static readonly string[] Several = ["allOf", "anyOf", "oneOf", "prefixItems", "properties", "patternProperties", "dependentSchemas", "$defs"];

    public static IEnumerable<string> Broken(JsonElement root) => Broken(root, root, "#", []);

    private static IEnumerable<string> Broken(JsonElement root, JsonElement schema, string at, IReadOnlyList<JsonElement> around)
    {
        if (schema.ValueKind is JsonValueKind.True or JsonValueKind.False)
            return [];
        return
        [
            .. Keywords(schema, at, around), .. Objects(schema, at, around), .. Texts(root, schema, at),
            .. Parts(schema).SelectMany(p => Broken(root, p.Schema, $"{at}/{p.Name}", InPlace.Contains(p.Name.Split('/')[0]) ? [.. around, schema, .. Meant(root, schema)] : [])),
        ];
    }

    private static IEnumerable<string> Keywords(JsonElement schema, string at, IReadOnlyList<JsonElement> around)
    {
        var type = TypeOf(schema) ?? around.Select(TypeOf).FirstOrDefault(t => t is not null);
        if (type is not null && !Types.Contains(type))
            yield return $"{at}: type {type} is none";
        foreach (var keyword in schema.EnumerateObject().Select(k => k.Name).Where(k => !OfAnyType.Contains(k)))
        {
            var meant = OfType.FirstOrDefault(t => t.Value.Contains(keyword)).Key;
            if (meant is null)
                yield return $"{at}: {keyword} is no keyword";
            else if (meant != (type == "integer" ? "number" : type))
                yield return $"{at}: {keyword} means nothing to type {type ?? "unknown"}";
        }
    }

    private static IEnumerable<string> Objects(JsonElement schema, string at, IReadOnlyList<JsonElement> around)
    {
        if (around.Count == 0 && TypeOf(schema) == "object" && !schema.TryGetProperty("additionalProperties", out _) && !schema.TryGetProperty("unevaluatedProperties", out _))
            yield return $"{at}: it is not said whether the object is closed";
        var known = around.Append(schema).SelectMany(s => Names(s, "properties")).ToHashSet();
        foreach (var name in Names(schema, "required").Where(n => !known.Contains(n)))
            yield return $"{at}: required {name} is no property";
        // What is absent satisfies every rule about it.
        if (schema.TryGetProperty("if", out var condition))
            foreach (var name in Names(condition, "properties").Except(Names(condition, "required")).Except(Names(schema, "required")))
                yield return $"{at}: if holds when {name} is absent";
    }

    private static IEnumerable<string> Texts(JsonElement root, JsonElement schema, string at)
    {
        if (schema.TryGetProperty("format", out var format) && !Formats.Contains(format.GetString()))
            yield return $"{at}: format {format} is not known";
        if (schema.TryGetProperty("pattern", out var pattern) && !IsPattern(pattern.GetString()!))
            yield return $"{at}: pattern {pattern} is no expression";
        if (schema.TryGetProperty("$ref", out var reference) && reference.GetString()!.StartsWith('#') && !Meant(root, schema).Any())
            yield return $"{at}: $ref {reference} leads nowhere";
    }

    // What a $ref within the document leads to.
    private static IEnumerable<JsonElement> Meant(JsonElement root, JsonElement schema)
    {
        const string shared = "#/$defs/";
        if (schema.TryGetProperty("$ref", out var reference) && reference.GetString() is { } text && text.StartsWith(shared, StringComparison.Ordinal)
            && root.TryGetProperty("$defs", out var all) && all.TryGetProperty(text[shared.Length..], out var meant))
            yield return meant;
    }

    private static IEnumerable<(string Name, JsonElement Schema)> Parts(JsonElement schema)
    {
        foreach (var keyword in schema.EnumerateObject())
        {
            if (One.Contains(keyword.Name))
                yield return (keyword.Name, keyword.Value);
            else if (Several.Contains(keyword.Name) && keyword.Value.ValueKind == JsonValueKind.Object)
                foreach (var part in keyword.Value.EnumerateObject())
                    yield return ($"{keyword.Name}/{part.Name}", part.Value);
            else if (Several.Contains(keyword.Name))
                foreach (var (part, index) in keyword.Value.EnumerateArray().Select((p, i) => (p, i)))
                    yield return ($"{keyword.Name}/{index}", part);
        }
    }

    private static string? TypeOf(JsonElement schema) => schema.TryGetProperty("type", out var type) ? type.GetString() : null;

    private static IEnumerable<string> Names(JsonElement schema, string keyword) =>
        schema.ValueKind != JsonValueKind.Object || !schema.TryGetProperty(keyword, out var names) ? []
            : names.ValueKind == JsonValueKind.Object ? [.. names.EnumerateObject().Select(n => n.Name)]
            : [.. names.EnumerateArray().Select(n => n.GetString()!)];

    // The dialect of ECMA-262, as the standard recommends.
    private static bool IsPattern(string pattern)
    {
        try
        {
            _ = new Regex(pattern, RegexOptions.ECMAScript);
            return true;
        }
        catch (ArgumentException)
        {
            return false;
        }
    }
}
