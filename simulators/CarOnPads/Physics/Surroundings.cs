namespace CarOnPads.Physics;

/// <summary>What the world does to the car at one instant. SI units.</summary>
struct Surroundings
{
    /// <summary>A jack head so low that it touches nothing.</summary>
    public const double Stowed = -0.2;

    /// <summary>Free-length change at the wheels, m: warp and perches.</summary>
    public Four FreeLength;
    /// <summary>Pad surface plus the tyre's own run-out, m.</summary>
    public Four Ground;
    /// <summary>Jack heads above the design height of the body over them, m.</summary>
    public Four Jack;
    /// <summary>Hands and knees on the corners of the body, N, downward positive.</summary>
    public Four Push;
    /// <summary>Front bar connected.</summary>
    public bool FrontBar;
    /// <summary>Rear bar connected.</summary>
    public bool RearBar;
    /// <summary>Suspension friction present.</summary>
    public bool Friction;
    /// <summary>Tyres grip the pads sideways.</summary>
    public bool Scrub;
    /// <summary>Speed at which the wheels roll, m/s.</summary>
    public double Rolling;
    /// <summary>What scrub relaxes to while the wheels roll, N.</summary>
    public Four ScrubAfterRolling;
}
