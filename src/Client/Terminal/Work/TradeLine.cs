namespace ScaleLink.Client.Terminal;

/// <summary>One aim of the perches and what the others are then.</summary>
internal static class TradeLine
{
    public static string Of(string aim, double crossWeightPercent, double frontSideKg, double rearSideKg, double leftShareGapPercent) =>
        $"  {aim,-18} cross weight {crossWeightPercent:0.00} %, LF-RF {frontSideKg:+0.0;-0.0;0.0} kg, LR-RR {rearSideKg:+0.0;-0.0;0.0} kg, left shares {leftShareGapPercent:+0.0;-0.0;0.0} % apart";
}
