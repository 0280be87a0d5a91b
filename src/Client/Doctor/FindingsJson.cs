using System.Text.Json.Serialization;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Doctor;

/// <summary>One check of <c>doctor --json</c>; <see cref="Result"/> is pass, fail or left_out.</summary>
internal sealed record FindingJson(string Check, string Subject, string Result, string Message, string? Code, string? Remedy);

/// <summary>What <c>doctor --json</c> prints.</summary>
internal sealed record FindingsJson(IReadOnlyList<FindingJson> Findings)
{
    private const int LongestText = 400;

    public static FindingsJson Of(IReadOnlyList<CheckResult> findings) => new([.. findings.Select(Of)]);

    private static FindingJson Of(CheckResult f) => new(
        f.Check, PeerText.Clean(f.Subject, LongestText), f.Outcome == Outcome.LeftOut ? "left_out" : f.Outcome.ToString().ToLowerInvariant(),
        PeerText.Clean(f.Message, LongestText), Present(f.Wrong?.Code.Text), Present(f.Wrong?.Remedy));

    private static string? Present(string? text) => text is { Length: > 0 } ? PeerText.Clean(text, LongestText) : null;
}

/// <summary>Names in snake case, as in all that is printed as JSON; what is not known is left out.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(FindingsJson))]
internal sealed partial class DoctorTexts : JsonSerializerContext;
