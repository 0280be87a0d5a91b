using System.Text.Json.Serialization;

namespace ScaleLink.Client.Json;

/// <summary>One pad's answer to <c>zero</c>: a zero or a refusal, never both.</summary>
internal sealed record ZeroResultJson(string Corner, ZeroJson? Zero, Diagnostic? Refused);

/// <summary>What <c>zero --json</c> prints.</summary>
internal sealed record ZeroResultsJson(IReadOnlyList<ZeroResultJson> Results);

/// <summary>What every command prints when it cannot do what was asked.</summary>
internal sealed record TroubleJson(Diagnostic Trouble);

/// <summary>One line of <c>demo --json</c>: what the crew does, or what it read.</summary>
internal sealed record DemoJson
{
    public required double AtS { get; init; }
    public string? Doing { get; init; }
    public ValueJson? CrossWeightPercent { get; init; }
    public string? Aim { get; init; }
    public bool? Converged { get; init; }
    public int? Adjustments { get; init; }
}

/// <summary>Names in snake case; what is not known is left out.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(LoadsJson))]
[JsonSerializable(typeof(PadsJson))]
[JsonSerializable(typeof(ZeroResultsJson))]
[JsonSerializable(typeof(TroubleJson))]
[JsonSerializable(typeof(DemoJson))]
internal sealed partial class ClientJson : JsonSerializerContext;
