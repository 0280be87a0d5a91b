using System.Text.Json;
using System.Text.Json.Serialization;

namespace ScaleLink.Daemon.Work;

/// <summary>Steps as JSON, for the ledger.</summary>
public static class WorkJson
{
    /// <summary>How steps are written.</summary>
    internal static JsonSerializerOptions Options { get; } = new(JsonSerializerDefaults.Web)
    {
        // What can be worked out again is not written down.
        IgnoreReadOnlyProperties = true,
        NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
        Converters = { new JsonStringEnumConverter() },
    };

    /// <summary>A step as JSON.</summary>
    public static string Write(WorkStep step) => JsonSerializer.Serialize(step, Options);

    /// <summary>A step from its JSON.</summary>
    /// <exception cref="JsonException">Not the JSON of a step.</exception>
    public static WorkStep Read(string json) => JsonSerializer.Deserialize<WorkStep>(json, Options) ?? throw new JsonException("The text holds no step.");
}
