using System.Text.Json.Serialization;

namespace ScaleLink.Weighing.InclinometerZeros;

/// <summary>How a pad tilted by its own inclinometer while it rested, its zero still in it.</summary>
/// <param name="PitchDeg">Mean pitch in the pad's own axes, degrees, ISO 8855.</param>
/// <param name="RollDeg">Mean roll in the pad's own axes, degrees, ISO 8855.</param>
/// <param name="RepeatabilityDeg">Standard uncertainty of either mean by the repeatability of its samples, degrees.</param>
/// <param name="At">UTC.</param>
sealed record TiltReading(double PitchDeg, double RollDeg, [property: JsonPropertyName("scatterDeg")] double RepeatabilityDeg, DateTimeOffset At)
{
    /// <summary>Temperature of the pad, degrees Celsius; absent where it has no thermometer.</summary>
    public double? TemperatureC { get; init; }

    /// <summary>The crew has said that the pad was turned, since nothing else could tell.</summary>
    public bool SaidTurned { get; init; }
}
