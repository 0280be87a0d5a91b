using ScaleLink.Api.V1;

namespace ScaleLink.Client.Readings;

/// <summary>The corrections of the patch that are in the loads, in a few words: a crew reads them in passing.</summary>
internal static class PatchWords
{
    private static readonly string[] Kinds = ["slope", "warp"];

    /// <summary>Each that is on, with its size at the wheel that it changes most, or that it was refused. Empty: none is on.</summary>
    public static string Of(Loads loads)
    {
        var parts = Kinds.Select(kind => Part(kind, [.. loads.Corners.SelectMany(c => c.Corrections).Where(c => c.Name == kind)])).Where(p => p.Length > 0).ToList();
        return parts.Count == 0 ? "" : $"patch: {string.Join(", ", parts)}";
    }

    private static string Part(string kind, IReadOnlyList<Correction> corrections) => corrections switch
    {
        [] => "",
        _ when corrections.Any(c => !c.HasSizeKg) => $"{kind} REFUSED",
        _ => $"{kind} {corrections.Max(c => Math.Abs(c.SizeKg)):0.0} kg",
    };
}
