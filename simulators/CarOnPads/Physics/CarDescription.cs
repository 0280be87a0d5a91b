using System.Text.Json.Serialization;

namespace CarOnPads.Physics;

/// <summary>
/// A car as its file describes it. Places are measured from the ground point in the middle of the wheelbase:
/// x forward, y left, z up (ISO 8855). Masses in kg, lengths as named.
/// </summary>
sealed record CarDescription
{
    /// <summary>What the crew calls it.</summary>
    public required string Name { get; init; }
    /// <summary>Between the axles.</summary>
    public required double WheelbaseM { get; init; }
    /// <summary>In race trim, without the driver.</summary>
    public required double MassKg { get; init; }
    /// <summary>Part of <see cref="MassKg"/> on the front axle, 0 to 1.</summary>
    public required double FrontWeight { get; init; }
    /// <summary>Part of <see cref="MassKg"/> on the left side, 0 to 1.</summary>
    public required double LeftSideWeight { get; init; }
    /// <summary>Height of the sprung mass's centre above the ground.</summary>
    public required double CgHeightM { get; init; }
    /// <summary>Sprung mass about its own lateral axis.</summary>
    public required double PitchInertiaKgM2 { get; init; }
    /// <summary>Sprung mass about its own longitudinal axis.</summary>
    public required double RollInertiaKgM2 { get; init; }
    /// <summary>Who sits in the car when <c>driver</c> is in.</summary>
    public required PlacedMass Driver { get; init; }
    /// <summary>Left and right front.</summary>
    public required AxleDescription Front { get; init; }
    /// <summary>Left and right rear.</summary>
    public required AxleDescription Rear { get; init; }
    /// <summary>Free-length differences built into the car, mm at the wheel; positive lifts that corner.</summary>
    public required CornerValues WarpMm { get; init; }
}

/// <summary>A mass and its place in the car.</summary>
/// <param name="Kg">Mass.</param>
/// <param name="XM">Forward of the middle of the wheelbase.</param>
/// <param name="YM">Left of the centre line.</param>
/// <param name="ZM">Above the ground.</param>
sealed record PlacedMass(
    double Kg,
    [property: JsonPropertyName("x_m")] double XM,
    [property: JsonPropertyName("y_m")] double YM,
    [property: JsonPropertyName("z_m")] double ZM);

/// <summary>One number a corner, as a file writes it.</summary>
sealed record CornerValues(
    [property: JsonPropertyName("LF")] double LF,
    [property: JsonPropertyName("RF")] double RF,
    [property: JsonPropertyName("LR")] double LR,
    [property: JsonPropertyName("RR")] double RR)
{
    internal Four ToFour() => Four.Of(LF, RF, LR, RR);
}

/// <summary>Both corners of one axle. Rates at the spring or tyre; damping, stops and friction at the wheel.</summary>
sealed record AxleDescription
{
    /// <summary>Between the contact patches.</summary>
    public required double TrackM { get; init; }
    /// <summary>Wheel, hub and the parts that move with them, one corner.</summary>
    public required double UnsprungKg { get; init; }
    /// <summary>Spring rate.</summary>
    public required double SpringNPerMm { get; init; }
    /// <summary>Spring travel / wheel travel.</summary>
    public required double MotionRatio { get; init; }
    /// <summary>Perch travel of one turn.</summary>
    public required double PerchPitchMm { get; init; }
    /// <summary>Vertical rate of one tyre.</summary>
    public required double TyreNPerMm { get; init; }
    /// <summary>Vertical damping of one tyre.</summary>
    public required double TyreNsPerM { get; init; }
    /// <summary>Damper, wheel going up.</summary>
    public required double BumpNsPerM { get; init; }
    /// <summary>Damper, wheel going down.</summary>
    public required double ReboundNsPerM { get; init; }
    /// <summary>Anti-roll bar: force at one wheel per mm of difference between the wheels.</summary>
    public required double BarNPerMm { get; init; }
    /// <summary>Difference between the wheels at which the bar carries nothing, left minus right.</summary>
    public double BarPreloadMm { get; init; }
    /// <summary>Wheel travel down from design height to the droop stop.</summary>
    public required double DroopMm { get; init; }
    /// <summary>Wheel travel up from design height to the bump stop.</summary>
    public required double BumpMm { get; init; }
    /// <summary>Most that seals, bushes and joints can hold against the wheel's travel.</summary>
    public required double FrictionN { get; init; }
    /// <summary>Stiffness of that friction before it slips.</summary>
    public required double FrictionNPerMm { get; init; }
    /// <summary>Track change per unit of wheel travel: how far the tyre must scrub.</summary>
    public required double ScrubRatio { get; init; }
    /// <summary>Lateral rate of one tyre.</summary>
    public required double TyreLateralNPerMm { get; init; }
    /// <summary>Tyre on pad, coefficient of friction.</summary>
    public required double Grip { get; init; }
    /// <summary>Standard deviation of the tyre's radius around its turn.</summary>
    public required double RunOutMm { get; init; }
}
