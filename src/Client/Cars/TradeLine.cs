using ScaleLink.Client.Runtime;
using static ScaleLink.Measure.Sentences.Arguments;

namespace ScaleLink.Client.Cars;

/// <summary>What perches and ballast can be asked for, one line each.</summary>
internal static class TradeLine
{
    private const int LongestName = 30;

    /// <summary>One way to a share by mass.</summary>
    public static string Ballast(Glyphs glyphs, double kg, string? from, string? to, double sharePercent, bool reaches) =>
        glyphs.Line($"  ballast: {Kg(kg):0.0} {(string.IsNullOrEmpty(from) ? "" : $"out of {PeerText.Clean(from, LongestName)} ")}{(string.IsNullOrEmpty(to) ? "" : $"into {PeerText.Clean(to, LongestName)} ")}gives {sharePercent:0.00} %{(reaches ? "" : ", and no more")}");

    /// <summary>One aim of the perches and what the others are then.</summary>
    public static string Of(Glyphs glyphs, string aim, double crossWeightPercent, double frontSideKg, double rearSideKg, double leftSideWeightGapPercent) =>
        glyphs.Line($"  {aim.PadRight(18)} cross weight {crossWeightPercent:0.00} %, LF-RF {Kg(frontSideKg):+0.0}, LR-RR {Kg(rearSideKg):+0.0}, left-side weights {leftSideWeightGapPercent:+0.0;-0.0;0.0} % apart");
}
