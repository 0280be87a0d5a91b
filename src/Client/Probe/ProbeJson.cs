using System.Text.Json.Serialization;
using ScaleLink.Probing.Recognition;

namespace ScaleLink.Client.Probe;

/// <summary>What <c>probe --json</c> prints.</summary>
internal sealed record ProbeJson(string Port, int? Baud, string Parity, int DataBits, int StopBits, int Bytes, IReadOnlyList<string> Heard, string? Protocol, string Summary, IReadOnlyList<string> Remarks, string? Proposal)
{
    public static ProbeJson Of(PortFinding f, string? proposal) => f.Trouble is { } trouble
        ? new(f.Port, null, "none", 8, 1, 0, [], null, trouble.ToString(), [], null)
        : new(f.Port, f.Baud, f.Format.Parity.ToString().ToLowerInvariant(), f.Format.DataBits, f.Format.StopBits, f.Bytes, f.Heard, f.Found[0].Protocol,
            string.Join("; ", f.Found.Select(x => x.Summary)), [.. f.Found.SelectMany(x => x.Remarks).Distinct()], proposal);
}

/// <summary>Names in snake case, as in all that is printed as JSON; what is not known is left out.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(ProbeJson))]
internal sealed partial class ProbeTexts : JsonSerializerContext;
