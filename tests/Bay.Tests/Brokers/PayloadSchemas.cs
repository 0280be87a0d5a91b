using System.Collections.Concurrent;
using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using Shared;

namespace Bay.Tests.Brokers;

/// <summary>The published schemas of MQTT payloads.</summary>
internal static class PayloadSchemas
{
    private static readonly ConcurrentDictionary<string, JsonSchema> Read = new();

    /// <summary>Fails when a payload does not follow the schema of its topic; gives the schema's name.</summary>
    public static string Hold(string topic, JsonNode payload)
    {
        var name = topic.Split('/') is [_, _, _, "pads", _] ? "pad" : topic.Split('/')[^1];
        var schema = Read.GetOrAdd(name, n => JsonSchema.FromFile(RepositoryRoot.File("proto", "mqtt", "v1", $"{n}.schema.json")));
        var result = schema.Evaluate(payload.Deserialize<JsonElement>(), new EvaluationOptions { OutputFormat = OutputFormat.List });
        Assert.True(result.IsValid, $"{topic} {payload}\n{JsonSerializer.Serialize(result.Details?.Where(d => d.Errors is not null))}");
        return name;
    }
}
