
namespace ScaleLink.Weighing.SiteCheck;

/// <summary>How the zero of one pad moves.</summary>
/// <param name="KgPerMinute">Least squares, touches taken out. Its uncertainty bears that noise is not white.</param>
/// <param name="BendKgPerMinute">How much steeper the second half runs than the first, as far as noise does not explain it: one standard uncertainty of what comes after.</param>
/// <param name="NoiseKg">Standard deviation of one moment about the trend, kg.</param>
/// <param name="Touches">What was taken out.</param>
sealed record ZeroTrend(Value KgPerMinute, double BendKgPerMinute, double NoiseKg, IReadOnlyList<PadTouch> Touches);
