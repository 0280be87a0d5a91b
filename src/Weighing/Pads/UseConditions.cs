namespace ScaleLink.Weighing.Pads;

/// <summary>Under what conditions a calibration is used. What is null is taken as it was at the calibration procedure, or unknown.</summary>
/// <param name="Place">Null: where it was calibrated.</param>
/// <param name="TemperatureC">Null: anywhere within <see cref="UnknownTemperatureSpanK"/> of the calibration procedure's.</param>
sealed record UseConditions(Place? Place = null, double? TemperatureC = null)
{
    /// <summary>Without a thermometer the pad is taken to be within so many kelvin of the calibration procedure (common practice, no published source).</summary>
    public const double UnknownTemperatureSpanK = 10;

    /// <summary>Where it was calibrated, temperature unknown.</summary>
    public static UseConditions SamePlace { get; } = new();
}
