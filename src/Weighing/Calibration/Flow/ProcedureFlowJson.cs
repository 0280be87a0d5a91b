using System.Text.Json;
using System.Text.Json.Serialization;

namespace ScaleLink.Weighing.Calibration.Flow;

/// <summary>A calibration procedure and a calibration as JSON, for the record and for taking a calibration procedure up again after a restart.</summary>
static class ProcedureFlowJson
{
    /// <summary>Settings that carry every number through unchanged, infinity included, and enums by name.</summary>
    public static JsonSerializerOptions Options { get; } = Made();

    /// <summary>The flow as JSON.</summary>
    public static string Write(ProcedureFlow flow) => JsonSerializer.Serialize(flow, Options);

    /// <summary>The flow from its JSON.</summary>
    /// <exception cref="JsonException">Not the JSON of a flow.</exception>
    public static ProcedureFlow Read(string json) =>
        JsonSerializer.Deserialize<ProcedureFlow>(json, Options) ?? throw new JsonException("The text holds no calibration procedure.");

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
