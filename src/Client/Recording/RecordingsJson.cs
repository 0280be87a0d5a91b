using System.Text.Json.Serialization;
using ScaleLink.Api.V1;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Recording;

/// <summary>One link recording; <see cref="File"/> where it has been copied to.</summary>
internal sealed record RecordingJson(string Name, string? Written, ulong Bytes, string? File);

/// <summary>What <c>record --json</c> prints.</summary>
internal sealed record RecordingsJson(IReadOnlyList<RecordingJson> Recordings)
{
    public static RecordingsJson Of(IReadOnlyList<RecordingFile> recordings, IReadOnlyList<string>? copies) => new(
        [.. recordings.Select((c, k) => new RecordingJson(PeerText.Clean(c.Name, 120), c.Written?.ToDateTime().ToString("yyyy-MM-ddTHH:mm:ss.fffZ"), c.Bytes, copies?[k]))]);
}

/// <summary>Names in snake case, as in all that is printed as JSON; what is not known is left out.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(RecordingsJson))]
internal sealed partial class RecordTexts : JsonSerializerContext;
