using System.Text.Json.Serialization;

namespace ScaleLink.Client.Probe;

/// <summary>What <c>probe --json</c> prints.</summary>
internal sealed record ProbeJson(string Port, int? Baud, string Parity, int DataBits, int StopBits, int Bytes, IReadOnlyList<string> Heard, string? Protocol, string Summary, IReadOnlyList<string> Remarks, string? Proposal)
{
    public static ProbeJson Of(ProbeReport r) => new(r.Port, r.Baud, r.Format.Parity.ToString().ToLowerInvariant(), r.Format.DataBits, r.Format.StopBits, r.Bytes, r.Heard, r.Guess.Protocol, r.Guess.Summary, r.Guess.Remarks, r.Proposal);
}

/// <summary>Names in snake case, as in all that is printed as JSON; what is not known is left out.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(ProbeJson))]
internal sealed partial class ProbeTexts : JsonSerializerContext;
