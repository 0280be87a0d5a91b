namespace CarOnPads.Physics;

/// <summary>
/// The body with whoever and whatever is in it: mass, first and second moments about the middle of the wheelbase,
/// and the inverse of the mass matrix of (heave, pitch, roll).
/// </summary>
sealed class SprungMass
{
    SprungMass(double mass, double mx, double my, double mh, double[,] matrix)
    {
        Mass = mass;
        MomentX = mx;
        MomentY = my;
        MomentHeight = mh;
        Inverse = SymmetricInverse.Of(matrix);
    }

    /// <summary>kg.</summary>
    public double Mass { get; }
    /// <summary>Mass times distance forward, kg m.</summary>
    public double MomentX { get; }
    /// <summary>Mass times distance left, kg m.</summary>
    public double MomentY { get; }
    /// <summary>Mass times height, kg m.</summary>
    public double MomentHeight { get; }
    /// <summary>Inverse mass matrix.</summary>
    internal SymmetricInverse Inverse { get; }

    /// <summary>The car's own body plus the passengers, each a point where it sits.</summary>
    public static SprungMass Of(Chassis chassis, IEnumerable<PlacedMass> aboard)
    {
        var car = chassis.Description;
        var mass = car.MassKg;
        var mx = mass * (car.FrontWeight - 0.5) * car.WheelbaseM;
        var my = mass * (car.LeftSideWeight - 0.5) * Chassis.MeanTrack(car, car.FrontWeight);
        foreach (var station in chassis.Stations)
        {
            mass -= station.UnsprungMass;
            mx -= station.UnsprungMass * station.X;
            my -= station.UnsprungMass * station.Y;
        }

        var mh = mass * car.CgHeightM;
        var pitch = car.PitchInertiaKgM2 + mx * mx / mass;
        var roll = car.RollInertiaKgM2 + my * my / mass;
        var product = mx * my / mass;
        foreach (var part in aboard)
        {
            mass += part.Kg;
            mx += part.Kg * part.XM;
            my += part.Kg * part.YM;
            mh += part.Kg * part.ZM;
            pitch += part.Kg * part.XM * part.XM;
            roll += part.Kg * part.YM * part.YM;
            product += part.Kg * part.XM * part.YM;
        }

        // A point at (x, y) moves z - x pitch + y roll.
        return new SprungMass(mass, mx, my, mh, new[,]
        {
            { mass, -mx, my },
            { -mx, pitch, -product },
            { my, -product, roll },
        });
    }
}
