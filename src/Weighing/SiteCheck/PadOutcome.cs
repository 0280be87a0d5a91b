using System.Text.Json.Serialization;


namespace ScaleLink.Weighing.SiteCheck;

/// <summary>What the watch found of one pad.</summary>
/// <param name="Corner">Where it stands.</param>
/// <param name="DriftKgPer10Min">Of its zero over the watch, kg in ten minutes.</param>
/// <param name="NoiseKg">Standard deviation of one moment about the trend, kg.</param>
/// <param name="Touches">What stood on it meanwhile.</param>
sealed record PadOutcome(Corner Corner, Value DriftKgPer10Min, double NoiseKg, IReadOnlyList<PadTouch> Touches)
{
    /// <summary>One standard uncertainty of what comes after, because the drift bends, kg in ten minutes.</summary>
    public double BendKgPer10Min { get; init; }

    /// <summary>At the end, °C.</summary>
    public double? TemperatureC { get; init; }

    /// <summary>End less beginning, K.</summary>
    public double? WarmedK { get; init; }

    /// <summary>How much more it warmed than the others (their median), K.</summary>
    public double? UnlikeK { get; init; }

    /// <summary>How much warmer it is than the others (their median), K.</summary>
    public double? WarmerK { get; init; }

    /// <summary>Zero by temperature, kg/K; null where it hardly warmed.</summary>
    public double? KgPerKelvin { get; init; }

    /// <summary>What comes after, by noise and bend, kg in ten minutes: one standard uncertainty.</summary>
    internal double AheadKgPer10Min => double.Hypot(DriftKgPer10Min.Uncertainty, BendKgPer10Min);

    /// <summary>At the end, degrees.</summary>
    public double? PitchDeg { get; init; }

    /// <summary>At the end, degrees.</summary>
    public double? RollDeg { get; init; }

    /// <summary>Angle between its surfaces at the beginning and at the end, degrees.</summary>
    [JsonPropertyName("leanChangeDeg")]
    public double? TiltChangeDeg { get; init; }
}
