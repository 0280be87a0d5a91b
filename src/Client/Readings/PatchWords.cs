using ScaleLink.Api.V1;
using ScaleLink.Client.Runtime;
using static ScaleLink.Measure.Sentences.Arguments;

namespace ScaleLink.Client.Readings;

/// <summary>The corrections of the patch that are in the loads, in a few words: a crew reads them in passing.</summary>
internal static class PatchWords
{
    private static readonly string[] Kinds = ["slope", "warp"];

    /// <summary>What stands for a correction that is on and was not made.</summary>
    public const string Refused = "REFUSED";

    /// <summary>Each that is on, with its size at the wheel that it changes most, or that it was refused. Empty: none is on.</summary>
    public static string Of(Loads loads, Glyphs glyphs) => Line(
        from kind in Kinds
        let each = loads.Corners.SelectMany(c => c.Corrections).Where(c => c.Name == kind).ToList()
        where each.Count > 0
        select Part(glyphs, kind, each.All(c => c.HasSizeKg) ? [.. each.Select(c => c.SizeKg)] : null));

    /// <summary>The same of a reading on record.</summary>
    public static string Of(WeighingRecord weighing, Glyphs glyphs) => Line(weighing.Patch.Select(p =>
        Part(glyphs, PeerText.Clean(p.Name, 12), p.SizeKg is { } kg ? [kg.Lf, kg.Rf, kg.Lr, kg.Rr] : null)));

    private static string Line(IEnumerable<string> parts) => string.Join(", ", parts) is { Length: > 0 } all ? $"patch: {all}" : "";

    private static string Part(Glyphs glyphs, string kind, IReadOnlyList<double>? sizesKg) => sizesKg is null ? $"{kind} {Refused}" : glyphs.Line($"{kind} {Kg(sizesKg.Max(Math.Abs)):0.0}");
}
