namespace ScaleLink.Weighing.Cars;

/// <summary>What stands between the body and the pad at one corner.</summary>
sealed record CornerSetup
{
    /// <summary>Rate of the spring itself, N/mm.</summary>
    public required Stated SpringRateNPerMm { get; init; }

    /// <summary>
    /// Spring travel divided by wheel travel. Some books use the inverse. Wheel rate = spring rate times its square
    /// (Barton and Fieldhouse, Automotive Chassis Engineering, eq. 3.29 to 3.33).
    /// </summary>
    public required Stated MotionRatio { get; init; }

    /// <summary>Vertical rate of the tyre at the pressure it is weighed with, N/mm.</summary>
    public required Stated TyreRateNPerMm { get; init; }

    /// <summary>The spring seat.</summary>
    public required Perch Perch { get; init; }

    /// <summary>Lowest ride height allowed at this corner, mm.</summary>
    public double? LowestRideHeightMm { get; init; }

    /// <summary>Highest ride height allowed at this corner, mm.</summary>
    public double? HighestRideHeightMm { get; init; }
}
