using ScaleLink.Weighing.Balance;

namespace ScaleLink.Weighing.Patch.Paddock;

/// <summary>What the drift of four zeros does to the car in ten minutes.</summary>
/// <param name="CrossWeightPercent">Cross weight, percent.</param>
/// <param name="FrontKg">LF + RF, kg.</param>
/// <param name="RearKg">LR + RR, kg.</param>
/// <param name="LeftKg">LF + LR, kg.</param>
/// <param name="RightKg">RF + RR, kg.</param>
public sealed record DriftEffect(Quantity CrossWeightPercent, Quantity FrontKg, Quantity RearKg, Quantity LeftKg, Quantity RightKg)
{
    internal static DriftEffect Of(IReadOnlyList<PadOutcome> pads, Corners crossWeightSlope)
    {
        var by = pads.ToDictionary(p => p.Corner);
        return new(Along(crossWeightSlope), Along(Patterns.Front), Along(Corners.Same(1) - Patterns.Front), Along(Patterns.Left), Along(Corners.Same(1) - Patterns.Left));

        Quantity Along(Corners weights) => new(
            Corners.From(c => by[c].DriftKgPer10Min.Value).Dot(weights),
            Math.Sqrt(Corners.From(c => Math.Pow(weights[c] * by[c].AheadKgPer10Min, 2)).Sum));
    }
}
