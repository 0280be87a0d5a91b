namespace ScaleLink.Weighing.SiteCheck;

/// <summary>Where a finding begins, and what is assumed where nobody told. Common practice, no published source, unless said otherwise.</summary>
sealed record SiteCheckLimits
{
    /// <summary>Drift of one zero, kg in ten minutes: half of the interval of 0.2 kg that a corner is usually read to.</summary>
    public double DriftKgPer10Min { get; init; } = 0.1;

    /// <summary>How much more than the others (their median) one pad may warm or cool over the watch, K.</summary>
    public double UnlikeK { get; init; } = 1.5;

    /// <summary>How much warmer than the others one pad may be, K.</summary>
    public double WarmerK { get; init; } = 5;

    /// <summary>Change of the tilt of a pad over the watch, degrees. An inclinometer in the sun moves by hundredths itself.</summary>
    public double TiltChangeDeg { get; init; } = 0.05;

    /// <summary>From the edge about which a pad tilts over to its middle, mm: so its tilt tells how far the middle sinks.</summary>
    public double LeverMm { get; init; } = 250;

    /// <summary>A pad is taken to be good within so many kelvin of its calibration procedure.</summary>
    public double CalibratedWithinK { get; init; } = Pads.UseConditions.UnknownTemperatureSpanK;

    /// <summary>Span of a pad by temperature where no data sheet told it, relative per kelvin. From memory: data sheets of cells of class C give 0.001 to 0.002 %.</summary>
    public double SpanPerKelvin { get; init; } = 2e-5;

    /// <summary>The tilt of a pad without an inclinometer, degrees either way: what the eye sees.</summary>
    public double UnseenTiltDeg { get; init; } = 1;

    /// <summary>A span from which on something can be told, s.</summary>
    public double ShortestSeconds { get; init; } = 8;
}
