namespace CarOnPads.Physics;

/// <summary>One corner of the car in SI units, everything as felt at the wheel.</summary>
sealed record WheelStation
{
    /// <summary>Contact forward of the middle of the wheelbase, m.</summary>
    public required double X { get; init; }
    /// <summary>Contact left of the centre line, m.</summary>
    public required double Y { get; init; }
    /// <summary>Unsprung mass, kg.</summary>
    public required double UnsprungMass { get; init; }
    /// <summary>Spring rate times motion ratio squared, N/m.</summary>
    public required double WheelRate { get; init; }
    /// <summary>Free length at the wheel per metre of perch travel: 1 / motion ratio.</summary>
    public required double PerchGain { get; init; }
    /// <summary>Perch travel of one turn, m.</summary>
    public required double PerchPitch { get; init; }
    /// <summary>Tyre rate, N/m.</summary>
    public required double TyreRate { get; init; }
    /// <summary>Tyre damping, N s/m.</summary>
    public required double TyreDamping { get; init; }
    /// <summary>Damping with the wheel going up, N s/m.</summary>
    public required double Bump { get; init; }
    /// <summary>Damping with the wheel going down, N s/m.</summary>
    public required double Rebound { get; init; }
    /// <summary>Travel down to the droop stop, m.</summary>
    public required double DroopTravel { get; init; }
    /// <summary>Travel up to the bump stop, m.</summary>
    public required double BumpTravel { get; init; }
    /// <summary>Friction before it slips, N.</summary>
    public required double FrictionLimit { get; init; }
    /// <summary>Friction's own stiffness, N/m.</summary>
    public required double FrictionRate { get; init; }
    /// <summary>Vertical stiffness of a tyre held from scrubbing, N/m.</summary>
    public required double ScrubRate { get; init; }
    /// <summary>Most vertical force of scrub per newton of load.</summary>
    public required double ScrubGrip { get; init; }
    /// <summary>Standard deviation of the tyre's radius, m.</summary>
    public required double RunOut { get; init; }
    /// <summary>Spring force at the wheel in the design position, N.</summary>
    public required double Preload { get; init; }
    /// <summary>Height of the tyre's undeformed lowest point above its pad in the design position, m: negative.</summary>
    public required double Rest { get; init; }

    internal static WheelStation From(CarDescription car, Wheel wheel, double designLoad, double gravity)
    {
        var front = wheel is Wheel.LF or Wheel.RF;
        var left = wheel is Wheel.LF or Wheel.LR;
        var axle = front ? car.Front : car.Rear;
        var tyre = axle.TyreNPerMm * 1e3;
        return new WheelStation
        {
            X = (front ? 0.5 : -0.5) * car.WheelbaseM,
            Y = (left ? 0.5 : -0.5) * axle.TrackM,
            UnsprungMass = axle.UnsprungKg,
            WheelRate = axle.SpringNPerMm * 1e3 * axle.MotionRatio * axle.MotionRatio,
            PerchGain = 1 / axle.MotionRatio,
            PerchPitch = axle.PerchPitchMm * 1e-3,
            TyreRate = tyre,
            TyreDamping = axle.TyreNsPerM,
            Bump = axle.BumpNsPerM,
            Rebound = axle.ReboundNsPerM,
            DroopTravel = axle.DroopMm * 1e-3,
            BumpTravel = axle.BumpMm * 1e-3,
            FrictionLimit = axle.FrictionN,
            FrictionRate = axle.FrictionNPerMm * 1e3,
            ScrubRate = axle.TyreLateralNPerMm * 1e3 * axle.ScrubRatio * axle.ScrubRatio,
            ScrubGrip = axle.Grip * axle.ScrubRatio,
            RunOut = axle.RunOutMm * 1e-3,
            Preload = designLoad - axle.UnsprungKg * gravity,
            Rest = -designLoad / tyre,
        };
    }
}
