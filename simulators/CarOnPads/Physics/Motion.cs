namespace CarOnPads.Physics;

/// <summary>The moving state: seven coordinates, their rates, and what friction and scrub hold. Copies by assignment.</summary>
struct Motion
{
    /// <summary>Body above design height in the middle of the wheelbase, m.</summary>
    public double Heave;
    /// <summary>Body pitch, rad, nose down positive (right-handed about y left).</summary>
    public double Pitch;
    /// <summary>Body roll, rad, right side down positive (right-handed about x forward).</summary>
    public double Roll;
    /// <summary>Lowest point of each undeformed tyre above the flat patch, m.</summary>
    public Four Hub;
    /// <summary>Rate of <see cref="Heave"/>, m/s.</summary>
    public double HeaveRate;
    /// <summary>Rate of <see cref="Pitch"/>, rad/s.</summary>
    public double PitchRate;
    /// <summary>Rate of <see cref="Roll"/>, rad/s.</summary>
    public double RollRate;
    /// <summary>Rates of <see cref="Hub"/>, m/s.</summary>
    public Four HubRate;
    /// <summary>Force that friction in the suspension holds now, N, positive pushing body and wheel apart.</summary>
    public Four Friction;
    /// <summary>Vertical force of tyre scrub now, N, same sign.</summary>
    public Four Scrub;
    /// <summary>What each tyre puts on its pad, N, never negative.</summary>
    public Four Load;

    /// <summary>Body above design height over the point (x, y), m.</summary>
    public readonly double BodyAt(double x, double y) => Heave - x * Pitch + y * Roll;

    /// <summary>Rate of <see cref="BodyAt"/>, m/s.</summary>
    public readonly double BodyRateAt(double x, double y) => HeaveRate - x * PitchRate + y * RollRate;

    /// <summary>Fastest vertical movement of any wheel or corner, m/s.</summary>
    public readonly double Speed =>
        Math.Max(HubRate.Peak, Math.Abs(HeaveRate) + 1.5 * Math.Abs(PitchRate) + Math.Abs(RollRate));
}
