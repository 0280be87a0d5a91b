namespace ScaleLink.Weighing.Settling;

/// <summary>The best knowledge of the four settled loads after one more block. Never NaN or infinite.</summary>
readonly record struct SettlingReading
{
    /// <summary>What can be said now; steady to the eye.</summary>
    public required SettlingVerdict Verdict { get; init; }

    /// <summary>Best estimate of the loads once the rocking has died, kg. Without a claim: the mean of the last half second.</summary>
    public required Corners Loads { get; init; }

    /// <summary>
    /// One standard uncertainty of <see cref="Loads"/>, kg: rocking and noise only (Type A). Calibration, zero, display
    /// step and creep are not in it. Null: nothing is claimed.
    /// </summary>
    public Corners? StandardUncertainty { get; init; }

    /// <summary>True when an uncertainty is stated.</summary>
    public bool Claimed => StandardUncertainty is not null;

    /// <summary>Sum of the four loads, kg.</summary>
    public required Value TotalKg { get; init; }

    /// <summary>(RF + LR) / total, percent. Null: there is no car to speak of.</summary>
    public Value? CrossWeightPercent { get; init; }

    /// <summary>(LF + RF) / total, percent. Null: there is no car to speak of.</summary>
    public Value? FrontWeightPercent { get; init; }

    /// <summary>(LF + LR) / total, percent. Null: there is no car to speak of.</summary>
    public Value? LeftSideWeightPercent { get; init; }

    /// <summary>LF minus RF, kg.</summary>
    public required Value FrontLeftRightDifferenceKg { get; init; }

    /// <summary>LR minus RR, kg.</summary>
    public required Value RearLeftRightDifferenceKg { get; init; }

    /// <summary>
    /// Degrees of freedom that go with every uncertainty here. The repeatability is not a sample of independent values, so this
    /// is not counted: twice the stated uncertainty was shown by simulation to cover at least 95 %, and 60 is where
    /// Student's t takes the value 2.00 (GUM Table G.2 lies on both sides: 2.01 at 50, 1.984 at 100).
    /// </summary>
    public double DegreesOfFreedom { get; init; }

    /// <summary>Expected seconds until settled. Null: settled already, or it cannot be told.</summary>
    public double? SecondsLeft { get; init; }

    /// <summary>
    /// True when the motion does not fit decaying rocking (an engine, wind, a person resting on the car) and the loads come
    /// from a fixed average with a wide uncertainty. Never settled.
    /// </summary>
    public bool Fallback { get; init; }

    /// <summary>
    /// Creep of the load cells, kg/s, when it shows above noise in a quiet stretch. A Type B component to be added by whoever
    /// states a budget: averaging does not take it away, letting the car stand does.
    /// </summary>
    public Corners? DriftPerSecond { get; init; }

    /// <summary>True when the car has been settled long enough to put the reading on record.</summary>
    public bool WeighingReady { get; init; }
}
