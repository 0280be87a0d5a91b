using ScaleLink.Weighing.Statics;

namespace ScaleLink.Weighing.Levelling;

/// <summary>Loads as they would be on level pads in one level plane.</summary>
/// <param name="LoadsKg">kg.</param>
/// <param name="CorrectionCovariance">What the corrections add to the covariance of the loads, kg².</param>
/// <param name="Corrections">Tilt, slope, warp, in this order.</param>
sealed record CorrectedLoads(Corners LoadsKg, CornerMatrix CorrectionCovariance, IReadOnlyList<LoadCorrection> Corrections)
{
    /// <summary>True when something that is out of limits or unknown was left uncorrected: mark the reading.</summary>
    public bool Marked => Corrections.Any(c => c.Refusal is not null);
}
