using System.Text.Json;
using System.Text.Json.Serialization;

namespace ScaleLink.Weighing.Calibration;

/// <summary>A proof and a calibration as JSON, for the record and for taking a proof up again after a restart.</summary>
public static class ProofFlowJson
{
    /// <summary>Settings that carry every number through unchanged, infinity included, and enums by name.</summary>
    public static JsonSerializerOptions Options { get; } = Made();

    /// <summary>The flow as JSON.</summary>
    public static string Write(ProofFlow flow) => JsonSerializer.Serialize(flow, Options);

    /// <summary>The flow from its JSON.</summary>
    /// <exception cref="JsonException">Not the JSON of a flow.</exception>
    public static ProofFlow Read(string json) =>
        JsonSerializer.Deserialize<ProofFlow>(json, Options) ?? throw new JsonException("The text holds no proof.");

    static JsonSerializerOptions Made()
    {
        var options = new JsonSerializerOptions(JsonSerializerDefaults.Web)
        {
            NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
            IgnoreReadOnlyProperties = false,
            Converters = { new JsonStringEnumConverter() },
        };
        options.MakeReadOnly(populateMissingResolver: true);
        return options;
    }
}
