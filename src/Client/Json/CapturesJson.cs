using System.Text.Json.Serialization;
using ScaleLink.Api.V1;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Json;

/// <summary>One capture; <see cref="File"/> where it has been copied to.</summary>
internal sealed record CaptureJson(string Name, string? Written, ulong Bytes, string? File);

/// <summary>What <c>record --json</c> prints.</summary>
internal sealed record CapturesJson(IReadOnlyList<CaptureJson> Captures)
{
    public static CapturesJson Of(IReadOnlyList<CaptureFile> captures, IReadOnlyList<string>? copies) => new(
        [.. captures.Select((c, k) => new CaptureJson(PeerText.Clean(c.Name, 120), c.Written?.ToDateTime().ToString("yyyy-MM-ddTHH:mm:ss.fffZ"), c.Bytes, copies?[k]))]);
}

/// <summary>Names in snake case, as in all that is printed as JSON; what is not known is left out.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(CapturesJson))]
internal sealed partial class RecordTexts : JsonSerializerContext;
