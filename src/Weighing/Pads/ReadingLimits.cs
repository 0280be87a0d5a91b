namespace ScaleLink.Weighing.Pads;

/// <summary>What a reading must keep to. The defaults are common practice without a published source.</summary>
sealed record ReadingLimits
{
    /// <summary>Tilt either way, degrees: half a degree takes 4 parts in 100 000 off the load.</summary>
    public double TiltDeg { get; init; } = 0.5;

    /// <summary>Change of temperature since the first reading, K.</summary>
    public double TemperatureChangeK { get; init; } = 4;

    /// <summary>A load may differ from what the step asks by this share before the step counts as wrong.</summary>
    public double LoadShare { get; init; } = 0.2;

    /// <summary>Changes smaller than this, kg, are not judged.</summary>
    public double SmallChangeKg { get; init; } = 2;
}
