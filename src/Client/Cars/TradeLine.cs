using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Cars;

/// <summary>What perches and ballast can be asked for, one line each.</summary>
internal static class TradeLine
{
    private const int LongestName = 30;

    /// <summary>One way to a share by mass.</summary>
    public static string Ballast(double kg, string? from, string? to, double sharePercent, bool reaches) =>
        $"  ballast: {kg:0.0} kg {(string.IsNullOrEmpty(from) ? "" : $"out of {PeerText.Clean(from, LongestName)} ")}{(string.IsNullOrEmpty(to) ? "" : $"into {PeerText.Clean(to, LongestName)} ")}gives {sharePercent:0.00} %{(reaches ? "" : ", and no more")}";

    /// <summary>One aim of the perches and what the others are then.</summary>
    public static string Of(string aim, double crossWeightPercent, double frontSideKg, double rearSideKg, double leftSideWeightGapPercent) =>
        $"  {aim,-18} cross weight {crossWeightPercent:0.00} %, LF-RF {frontSideKg:+0.0;-0.0;0.0} kg, LR-RR {rearSideKg:+0.0;-0.0;0.0} kg, left-side weights {leftSideWeightGapPercent:+0.0;-0.0;0.0} % apart";
}
