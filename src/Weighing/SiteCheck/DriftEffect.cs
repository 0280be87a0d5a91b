
namespace ScaleLink.Weighing.SiteCheck;

/// <summary>What the drift of four zeros does to the car in ten minutes.</summary>
/// <param name="CrossWeightPercent">Cross weight, percent.</param>
/// <param name="FrontKg">LF + RF, kg.</param>
/// <param name="RearKg">LR + RR, kg.</param>
/// <param name="LeftKg">LF + LR, kg.</param>
/// <param name="RightKg">RF + RR, kg.</param>
sealed record DriftEffect(Value CrossWeightPercent, Value FrontKg, Value RearKg, Value LeftKg, Value RightKg)
{
    internal static DriftEffect Of(IReadOnlyList<PadOutcome> pads, Corners crossWeightSlope)
    {
        var by = pads.ToDictionary(p => p.Corner);
        return new(Along(crossWeightSlope), Along(Shares.Front), Along(Corners.Same(1) - Shares.Front), Along(Shares.Left), Along(Corners.Same(1) - Shares.Left));

        Value Along(Corners weights) => new(
            Corners.From(c => by[c].DriftKgPer10Min.Estimate).Dot(weights),
            Math.Sqrt(Corners.From(c => Math.Pow(weights[c] * by[c].AheadKgPer10Min, 2)).Sum));
    }
}
