namespace ScaleLink.Weighing.Calibration;

/// <summary>Under what conditions a calibration is used. What is null is taken as it was at the proof, or unknown.</summary>
/// <param name="Place">Null: where it was proved.</param>
/// <param name="TemperatureC">Null: anywhere within <see cref="UnknownTemperatureSpanK"/> of the proof's.</param>
public sealed record UseConditions(Place? Place = null, double? TemperatureC = null)
{
    /// <summary>Without a thermometer the pad is taken to be within so many kelvin of the proof (common practice, no published source).</summary>
    public const double UnknownTemperatureSpanK = 10;

    /// <summary>Where it was proved, temperature unknown.</summary>
    public static UseConditions SamePlace { get; } = new();
}
