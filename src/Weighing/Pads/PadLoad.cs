using ScaleLink.Weighing.Statistics;

namespace ScaleLink.Weighing.Pads;

/// <summary>A load with the uncertainty that its calibration leaves. Noise, settling, tilt and floor come on top elsewhere.</summary>
/// <param name="Kg">The load, as mass in kg.</param>
/// <param name="Budget">Terms in kg.</param>
/// <param name="BeyondCalibration">True where the load exceeds what the calibration procedure reached, so that the budget says too little.</param>
readonly record struct PadLoad(double Kg, UncertaintyBudget Budget, bool BeyondCalibration)
{
    /// <summary>A load may exceed the highest of the calibration procedure by this share before it counts as beyond (common practice, no published source).</summary>
    public const double RangeMargin = 0.05;
}
